/**
 * Hour meters and load bands, by outing, day, month and season, and in all.
 *
 * <pre>
 *   use of each outing ──▶ {@link tautlog.desk.hours.HoursTable} ──┬──▶ {@link tautlog.desk.hours.HoursPage} ──▶ text, HTML
 *                                               ├──▶ {@link tautlog.desk.hours.HoursJson}
 *                                               └──▶ {@link tautlog.desk.hours.HoursCsv}
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.hours.HoursTable}. Sums are of whole samples and ticks: those of outings and of days are the same.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.hours;
