/**
 * The calibration of a load cell: its response, how good it is, and the file in which both stand.
 *
 * <pre>
 *   calibration.toml ──▶ {@link tautlog.calibration.CellCalibration#parse} ──┬─▶ sample.Calibration   counts → newtons
 *   (`tautlog calibrate` writes it)                             └─▶ {@link tautlog.calibration.FitQuality}   how far that may be off
 * </pre>
 *
 * <p>A recording keeps the file's text whole, as it keeps the rig. A file with the two numbers of a straight line alone is
 * a calibration too, but nothing is known of its quality. Nothing here opens a file or fits anything.
 */
@org.jspecify.annotations.NullMarked
package tautlog.calibration;
