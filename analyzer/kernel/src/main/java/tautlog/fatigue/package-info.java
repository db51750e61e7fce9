/**
 * What a varying load does to gear over time: turning points and rainflow cycles.
 *
 * <pre>
 *   history ──▶ {@link tautlog.fatigue.TurningPoints} ──▶ {@link tautlog.fatigue.Rainflow} ──▶ {@link tautlog.fatigue.Cycles}
 *   (values)    drops what moved less               pairs ranges             range, mean,
 *               than the gate                       into cycles              half or full
 * </pre>
 *
 * <p>Start at {@link tautlog.fatigue.Rainflow}. Both classes stream; each can also be used on whole arrays. Nothing here knows
 * of winches, files or time.
 */
@org.jspecify.annotations.NullMarked
package tautlog.fatigue;
