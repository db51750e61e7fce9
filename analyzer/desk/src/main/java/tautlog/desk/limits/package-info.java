/**
 * What the command {@code limits} shows: each hookup's limit, what sets it, what every item may carry.
 *
 * <pre>
 *   Rig ──▶ LimitsPage ──▶ LimitsText   a page of plain characters for the crew
 *    └───▶ LimitsJson                   one document for programs
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.limits.LimitsText}. Pure: a rig in, a text out. No figure is worked out here that
 * {@code tautlog.rig} does not give.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.limits;
