/**
 * Makes a recording from readings that were logged elsewhere.
 *
 * <pre>
 *   readings.csv ──▶ {@link tautlog.desk.importing.ReadingsFile} ──▶ {@link tautlog.desk.importing.Readings} ──▶ {@link tautlog.desk.importing.Import} ──▶ recording
 *                     (columns, TimeForm)      (times, counts)    (rate, numbers)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.importing.Import}. The readings stay what they were: the indicator's own digits are the
 * counts, uneven times are kept, a pause is a gap. The recording says that it is an import.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.importing;
