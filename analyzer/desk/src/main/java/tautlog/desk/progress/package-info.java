/**
 * How far long work is, and how long it will still take.
 *
 * <pre>
 *   long work ──▶ {@link tautlog.desk.progress.Progress} ──▶ a line on the terminal, with {@link tautlog.desk.progress.TimeLeft}
 *      ▲
 *   Ctrl-C ──▶ {@link tautlog.desk.progress.WhenStopped}
 * </pre>
 *
 * <p>Nothing here reads a clock or writes to a terminal: both are the commands'.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.progress;
