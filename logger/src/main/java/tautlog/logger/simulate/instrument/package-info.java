/**
 * The simulated instrument: what a load cell, a pulse sensor and a small board make of the world, as bytes on a line.
 *
 * <pre>
 *   World ──tension──▶ {@link tautlog.logger.simulate.instrument.LoadCell} ──counts──┐
 *         ──shaft───▶ {@link tautlog.logger.simulate.instrument.PulseSensor} ─pulses─┤
 *                                 {@link tautlog.logger.simulate.instrument.SimulatedInstrument} ──▶ frames ──▶
 *                                        {@link tautlog.logger.simulate.instrument.FaultyLine} ──▶ bytes
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.simulate.instrument.SimulatedInstrument#look}. It looks at the world after each step
 * and never changes it. The frames are {@code firmware-notes/wire.md}'s, through the encoder of {@code logger.wire}.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.simulate.instrument;
