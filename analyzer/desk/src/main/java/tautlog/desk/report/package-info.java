/**
 * What a history tells, in newtons and UTC: the figures of every page and of {@code --json}.
 *
 * <pre>
 *   analysis ──▶ {@link tautlog.desk.report.Derivation} ──▶ {@link tautlog.desk.report.Report} ──┬──▶ {@link tautlog.desk.report.JsonReport}
 *   (findings in numbers and counts)   (newtons, UTC)    └──▶ tautlog.desk.page (words), exporting (a table)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.report.Report}. What is not known is empty here and null in JSON, never 0. Nothing here
 * reads a file or a clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.report;
