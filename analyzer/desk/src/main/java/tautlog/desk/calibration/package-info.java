/**
 * Fits of a load cell's response to reference loads.
 *
 * <pre>
 *   loads, responses ──▶ {@link tautlog.desk.calibration.ResponseFit}: coefficients, residual, R²
 * </pre>
 *
 * <p>The response is fitted over the load, as NIST and ASTM E74 do; turning it round for use is the caller's.
 * A static fit says nothing of how the cell follows a shock. The linear algebra is Hipparchus', used here only.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.calibration;
