/**
 * A simulated instrument on a simulated hill: for the demo, for training, for tests without hardware.
 *
 * <pre>
 *   {@link tautlog.logger.simulate.Scenario} ──▶ Crew ──▶ physics.World ──▶ instrument ──▶ bytes ──▶ {@link tautlog.logger.simulate.Simulator} ══ port
 *                                   │                                                      ▲
 *                                Witness ──▶ Truth (JSON)                               beacon
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.simulate.Simulation}: it steps world, witness and instrument together and is pure; the
 * same scenario and seed give the same bytes. {@link tautlog.logger.simulate.Simulator} is its shell: port, pace, files. The
 * witness writes down what the world did, from its state alone, so that the detectors can be judged against it.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.simulate;
