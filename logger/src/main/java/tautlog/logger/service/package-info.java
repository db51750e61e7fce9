/**
 * The logger as a service: says that it has started, and that it lives, to what started it.
 *
 * <pre>
 *   run.LoggerRun ──works?──▶ {@link tautlog.logger.service.Feeding} ──READY=1, WATCHDOG=1──▶ {@link tautlog.logger.service.Supervisor}
 *                              (a thread of its own)                                        (systemd-notify)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.service.Feeding}. Who is not started as a service has none of it. Nothing here knows what the
 * logger does; whether it works it is told.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.service;
