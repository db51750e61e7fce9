/**
 * A tractor, its winch, a line and a log, as masses, springs and friction in steps of a fifth of a millisecond.
 *
 * <pre>
 *   {@link tautlog.logger.simulate.physics.Engine} ══shaft══ clutch ══ {@link tautlog.logger.simulate.physics.Drum}
 *                                  brake ┘     ║
 *                                          {@link tautlog.logger.simulate.physics.Line}  (tension ≥ 0, parts that may let go)
 *                                              ║
 *            {@link tautlog.logger.simulate.physics.Ground} ── friction ── {@link tautlog.logger.simulate.physics.DraggedLog} ── stump
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.simulate.physics.World#step}. Speeds first, then places (symplectic Euler); everything
 * that rubs is an impulse that at most stops what moves, so it sticks exactly and stays stable. SI units throughout: N,
 * m, kg, s, rad/s. Nothing here knows of samples, counts or detectors; nothing is random but the ground, which is seeded.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.simulate.physics;
