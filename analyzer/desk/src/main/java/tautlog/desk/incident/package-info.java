/**
 * One moment, for who was not there: owner, insurer, adviser, who may have nothing else before them.
 *
 * <pre>
 *   analysis.Analysis ──▶ {@link tautlog.desk.incident.IncidentStudy} ──▶ {@link tautlog.desk.incident.Incident} ─┬▶ {@link tautlog.desk.incident.IncidentPage} ──▶ page.Document
 *   a moment, how long round it ──▶      │  ▲                                            └▶ {@link tautlog.desk.incident.IncidentJson}
 *                        {@link tautlog.desk.incident.Witness} (readings again)   │
 *   notes, ledger, links kept elsewhere ───┘
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.incident.IncidentStudy}. A moment is one of the clock, or seconds into an outing that has none:
 * {@link tautlog.desk.incident.When}. Findings, limits, intervals and trust are those of the report, cut to the window; here is only
 * what a report does not tell: what was so at that moment. Nothing here opens a file, but the recordings through their studies.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.incident;
