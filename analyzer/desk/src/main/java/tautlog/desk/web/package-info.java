/**
 * The evening view: a small web server on this computer, and the page that it serves (in the resources of this room).
 *
 * <pre>
 *   browser ──▶ {@link tautlog.desk.web.WebServer} ──▶ {@link tautlog.desk.web.Guard} ──▶ {@link tautlog.desk.web.PageFiles}   the page, a fixed list of files
 *                (bounded threads)     (host, origin,      └──▶ {@link tautlog.desk.web.Api}         /api/…: JSON of season and trace
 *                                       token, method)        └──▶ {@link tautlog.desk.web.PlanApi}   planning.PullPlan's document
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.web.WebServer}. The only room that listens. No address names a file: pages are a fixed list, recordings and
 * days have ids. Whatever stands in a recording, a rig or a note leaves here as JSON and is shown as text.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.web;
