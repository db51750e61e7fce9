/**
 * What a disk does to files that a power cut, a full disk or another program may meet.
 *
 * <pre>
 *   ledger, notes ──▶ {@link tautlog.desk.disk.LineFile}   lines that are only ever added
 *   recording ──▶ {@link tautlog.desk.disk.FileState}      whether it may have changed since it was read
 * </pre>
 *
 * <p>Nothing here knows what stands in a file, or reads a clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.disk;
