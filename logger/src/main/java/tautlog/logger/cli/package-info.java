/**
 * The commands of {@code tautlogd}.
 *
 * <pre>
 *   {@link tautlog.logger.cli.TautlogDaemon} ─┬─ run       RunCommand ──▶ tautlog.logger.run.LoggerRun
 *                  ├─ listen    ListenCommand ──▶ tautlog.logger.run.LineWatch
 *                  ├─ ports     PortsCommand
 *                  ├─ status    StatusCommand ─┐
 *                  ├─ mark      MarkCommand ───┴─▶ tautlog.logger.control.ControlClient
 *                  └─ simulate  tautlog.logger.simulate
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.cli.TautlogDaemon}, the main class. Results go to stdout, all else to stderr; exit codes: 0
 * done, 2 wrong usage or configuration, 3 a recording or port could not be used, 70 a bug.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.cli;
