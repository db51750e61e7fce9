/**
 * The Debian package, installed as on a board: in a small Debian of its own, with a real systemd.
 *
 * <pre>
 *   debootstrap ──▶ {@link tautlog.logger.installed.DebianRoot} ──install──▶ layer ──boot──▶ {@link tautlog.logger.installed.BootedBoard}
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.installed.InstalledIT}. Needs root and two minutes for the Debian: run with {@code
 * TAUTLOG_MANDATORY=1} or {@code -Dtautlog.debian=true}, else it is skipped and says so.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.installed;
