/**
 * Service that is not forgotten: the ledger of what was done, seen and worked.
 *
 * <pre>
 *   bytes ──▶ LedgerLines ──▶ EntryReader ──▶ Corrections ──▶ {@link tautlog.service.Ledger}: entries that hold, complaints
 *   {@link tautlog.service.Entry} ──▶ {@link tautlog.service.EntryLine} ──▶ a line
 * </pre>
 *
 * <p>Start at {@link tautlog.service.Ledger}. Nothing here opens a file or reads a clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.service;
