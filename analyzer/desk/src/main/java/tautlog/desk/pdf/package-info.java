/**
 * The same page on paper: a file that keeps its text, its fonts and its order of reading.
 *
 * <pre>
 *   page.Document ──▶ page.HtmlPage (the one template) ──▶ {@link tautlog.desk.pdf.PdfPage} ──▶ bytes
 *                                            pdf.css ──▶      ▲
 *                     {@link tautlog.desk.pdf.PaperFonts} (embedded; what they lack is written out) ┘
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.pdf.PdfPage}. The only room that imports the libraries that write PDF. Nothing is fetched, no clock is
 * read: the same document, sheet and time give the same bytes.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.pdf;
