/**
 * The owner's and reviewer's program; nothing but its rooms stands here.
 *
 * <pre>
 *   {@code cli} ──▶ {@code analysis} ──▶ {@code report} ──▶ {@code page} (text, HTML) ◀── {@code drawing} ◀── {@code plot}
 *    │                          └──▶ JSON
 *    ├──▶ {@code hours}, {@code limits}       meters and limits, said by {@code page}
 *    └──▶ {@code importing}, {@code exporting}, {@code calibration}
 * </pre>
 *
 * <p>Start at {@code tautlog.desk.cli}. Recordings, rigs and counts come in; words, tables and drawings go out. Nothing here
 * knows the logger or decides what is a finding: that is the kernel's.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk;
