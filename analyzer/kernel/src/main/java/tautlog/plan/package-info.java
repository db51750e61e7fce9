/**
 * The pull it takes to skid a log, before it is pulled.
 *
 * <pre>
 *   "Norway spruce, 12 m, 40/28 cm" ──▶ LogReader ──▶ GreenLog: volume · density ──▶ weight ± 20 % ──┐
 *   ground or friction ─────────────────────────────▶ Friction: an interval ──────────────────────────┼─▶ Haul: W (μ cos α + sin α)
 *   slope ± ────────────────────────────────────────▶ Slope: an interval ─────────────────────────────┘   an interval
 * </pre>
 *
 * <p>Start at {@link tautlog.plan.HaulReader}. Everything is an interval, and none of it is a limit: the bands of friction
 * have no published table, and a log that hangs up takes the winch's full pull whatever is planned. What is wrong with the
 * texts is collected in {@link tautlog.plan.Flaws} and told at once. Nothing here opens a file of the user's.
 */
@org.jspecify.annotations.NullMarked
package tautlog.plan;
