/**
 * One outing as it happens: what the line tells goes to the recording and to the detectors, and which hookup is on is said.
 *
 * <pre>
 *   wire.OutingAssembler ──▶ {@link tautlog.logger.live.LiveOutings} ──▶ LiveOuting ─┬─▶ LiveEvents (recorder.Backlog)
 *                                 ▲                        ├─▶ detect.Detection ──▶ findings, seconds ──▶ LiveEvents
 *          selector, marks ── HookupInForce                ├─▶ beacon.BeaconLamp
 *                                                          └─▶ {@link tautlog.logger.live.LiveReadings} (status, listen)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.live.LiveOutings}. All of it runs on the reader thread; only the latest readings are
 * handed to others, as an immutable record.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.live;
