/**
 * Readings for a calibration: a typed load, the counts once they are steady, a row of a table.
 *
 * <pre>
 *   "10 kN up" ──▶ {@link tautlog.logger.calibrate.TypedLine} ─┐
 *   counts ──▶ {@link tautlog.logger.calibrate.SteadyCounts} ──┴─▶ {@link tautlog.logger.calibrate.ReadingsFile} (readings.csv)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.calibrate.SteadyCounts}. Counts are the converter's, raw: no calibration and no zero comes in
 * here. Ports, threads and the keyboard belong to who calls.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.calibrate;
