/**
 * Service that is not forgotten: what is due, by the tasks, what was done, and what the machine worked since.
 *
 * <pre>
 *   service.toml ──▶ {@link tautlog.service.ServicePlan} ── tasks ───────────────────────────────────┐
 *   ledger.jsonl ──▶ LedgerLines ──▶ EntryReader ──▶ Corrections ──▶ {@link tautlog.service.Ledger} ── entries ──┼──▶ {@link tautlog.service.Judge} ──▶ {@link tautlog.service.TaskState}
 *   recordings ──▶ (the desk) ──▶ {@link tautlog.service.Machine}, its {@link tautlog.service.Stint}s ─────────────────┘
 *   {@link tautlog.service.Entry} ──▶ {@link tautlog.service.EntryLine} ──▶ a line of the ledger
 * </pre>
 *
 * <p>Start at {@link tautlog.service.Judge} or {@link tautlog.service.Ledger}. What is not known is an interval, never 0; what would
 * reassure counts only when it is certain. Nothing here opens a file or reads a clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.service;
