/**
 * A page that a person reads: made once, shown as text or as HTML, so that both say the same.
 *
 * <pre>
 *   Report ──▶ {@link tautlog.desk.page.ReportPage} ──▶ {@link tautlog.desk.page.Document} ──┬──▶ {@link tautlog.desk.page.TextPage}
 *                 (sentences)          (sections, blocks)                  └──▶ {@link tautlog.desk.page.HtmlPage}
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.page.ReportPage}. Every figure is worked out before it comes here; here are words,
 * order and layout only. No page ever says that something is safe.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.page;
