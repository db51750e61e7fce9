/**
 * Fits of a load cell's response to reference loads, and how good they are.
 *
 * <pre>
 *   READINGS.csv ──▶ {@link tautlog.desk.calibration.ReadingsTable} ──▶ {@link tautlog.desk.calibration.CalibrationStudy} ──┬─▶ {@link tautlog.desk.calibration.CalibrationToml}   for logger and desk
 *                    (all problems at       (line and curve, which     ├─▶ {@link tautlog.desk.calibration.CalibrationJson}   for programs
 *                     once)                  is good enough, cautions) └─▶ {@link tautlog.desk.calibration.CalibrationPage}   for people
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.calibration.CalibrationStudy}. The response is fitted over the load, as NIST and ASTM E74 do, and
 * turned round for use by {@code tautlog.sample.Calibration}. A static fit says nothing of how the cell follows a shock. The linear
 * algebra and the distributions are Hipparchus', used here only.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.calibration;
