/**
 * An indicator that prints a line of text for each reading.
 *
 * <pre>
 *   bytes ──▶ LineFinder ── a whole line, 128 characters at most ──▶ {@link tautlog.logger.instrument.text.TextFeed}
 *                                                                  length, characters, pattern, checksum,
 *                                                                  unit, gross, number ──▶ ReadingOuting
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.instrument.text.TextFeed}. A line counts only between two heard line ends and only when all of
 * it is as configured; what fails is counted by the first test that it failed. A pattern may look at a line so often and no
 * more, so that none can hold up the reader.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.instrument.text;
