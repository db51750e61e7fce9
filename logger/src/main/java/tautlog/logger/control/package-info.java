/**
 * How other commands talk to the logger that runs.
 *
 * <pre>
 *   tautlogd status ──▶ {@link tautlog.logger.control.ControlClient} ══ tautlogd-….sock ══▶ {@link tautlog.logger.control.ControlServer} ──▶ {@link tautlog.logger.control.Controlled}
 *   tautlogd mark   ──▶                                                  (control thread)
 *          └── no logger runs: status.json, as the last one left it ◀── {@link tautlog.logger.control.StatusFile}
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.control.Controlled}. One line of JSON asks, one answers, over a Unix-domain socket of
 * the recordings folder, kept outside it ({@code ControlSocket.path}); only the user who runs the logger, and root, may
 * connect and so leave a mark. A client that says nothing is dropped after two
 * seconds.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.control;
