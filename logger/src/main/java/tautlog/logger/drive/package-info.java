/**
 * The owner's evening without a network: recordings onto a USB drive.
 *
 * <pre>
 *   /proc/self/mountinfo ──▶ {@link tautlog.logger.drive.Mounts} ──▶ {@link tautlog.logger.drive.DriveWatch} ──▶ beacon.BeaconLamp, {@link tautlog.logger.drive.DriveState}
 *                                            (drive thread) │ once for each drive and recording
 *                                                           ▼
 *   recordings folder ──▶ {@link tautlog.logger.drive.DriveVisit} ──▶ {@link tautlog.logger.drive.DriveCopy} (…​.part ▶ read back ▶ verify ▶ name) ──▶ the drive
 *                                                           └──▶ {@link tautlog.logger.drive.LastLinks} (last-links.txt)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.drive.DriveWatch}. The system mounts the drive ({@code firmware-notes/drive.md}); the logger only looks
 * whether one is there and never writes to a folder that is none. Whatever a drive does, it does to this room's
 * own daemon thread: recording never waits for it. Nothing on the drive is replaced by something that holds less.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.drive;
