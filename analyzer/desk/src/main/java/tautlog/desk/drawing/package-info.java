/**
 * From studies to the drawings of a page: which times to draw, and a second reading of their samples.
 *
 * <pre>
 *   studies, report ──▶ {@link tautlog.desk.drawing.ReportDrawings} ──▶ {@link tautlog.desk.drawing.DrawingPass} ──▶ plot ──▶ page.Drawings
 *                        (days, moments)      (one replay an outing)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.drawing.ReportDrawings}. Only pages with drawings come here; text and JSON do not.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.drawing;
