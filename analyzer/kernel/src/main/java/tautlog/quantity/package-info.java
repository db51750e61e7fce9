/**
 * Quantities that a person writes or reads, with their units; the only conversions.
 *
 * <pre>
 *   "12.5 kN" ──▶ Force, Length, Torque, TimeSpan, Density ──▶ exact decimals in N, mm, N m, s, kg/m3 ──▶ the program
 *   newtons   ──▶ ForceUnit.format ──▶ "15.7 kN" on a screen
 * </pre>
 *
 * <p>Start at {@link tautlog.quantity.Force}. What cannot be read is a {@link tautlog.quantity.QuantityException}, which says
 * how to write it. Nothing here rounds, except for a screen and where a cosine enters ({@link tautlog.quantity.Angle}).
 */
@org.jspecify.annotations.NullMarked
package tautlog.quantity;
