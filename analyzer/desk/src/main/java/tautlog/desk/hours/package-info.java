/**
 * Hour meters and load bands, by outing, day and in all.
 *
 * <pre>
 *   studies ──▶ {@link tautlog.desk.hours.HoursTable} ──┬──▶ {@link tautlog.desk.hours.HoursPage} ──▶ text
 *                                     └──▶ {@link tautlog.desk.hours.HoursJson}
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.hours.HoursTable}. No time is counted twice: the analysis has left copies out.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.hours;
