/**
 * What is due for service, when it will be, and the file in which the crew enters what was done.
 *
 * <pre>
 *   recordings ──▶ Machines ──┐                                   ┌──▶ ServicePage, ServiceJson
 *   service.toml ─────────────┼──▶ {@link tautlog.desk.service.ServiceState} ──┤
 *   ledger.jsonl ◀─▶ LedgerFile                                   └──▶ Forecast ──▶ ForecastPage, ForecastJson, Calendar
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.service.ServiceState}; what is due is judged in the kernel ({@link tautlog.service.Judge}). Nothing here
 * reads a clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.service;
