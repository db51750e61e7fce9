/**
 * What {@code logger.toml} says.
 *
 * <pre>
 *   logger.toml ──▶ {@link tautlog.logger.config.LoggerConfig} ─┐
 *   calibration.toml ──▶ CalibrationFile ────────────┼─▶ {@link tautlog.logger.config.Installation} ──▶ run, listen, status, mark
 *   rig.toml ──▶ tautlog.rig.Rig ────────────────────┘
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.config.Installation}: it reads the files and reports the problems of all of them at once.
 * {@code LoggerConfig.parse} touches nothing but its text. No port and no recording is opened here.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.config;
