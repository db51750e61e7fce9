/**
 * What the operator sees: the lamp on the instrument.
 *
 * <pre>
 *   reader ── sensor state ──┐
 *                            ├─▶ {@link tautlog.logger.beacon.BeaconLamp} ──▶ {@link tautlog.logger.beacon.BeaconSender} ──▶ the line
 *   recorder ── disk fault ──┘   precedence, holds       (beacon thread)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.beacon.BeaconLamp}. Only the latest state is ever sent: an instrument that does not read
 * holds up the beacon thread and nothing else.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.beacon;
