/**
 * The command line of the program at the desk.
 *
 * <pre>
 *   arguments ──▶ {@link tautlog.desk.cli.Tautlog} ──▶ report, hours, service, limits, calibrate, verify, import, export, view ──▶ exit code
 *                      │                          (each one class)
 *                      └──▶ {@link tautlog.desk.cli.Exits}: 0 done · 1 found · 2 usage, configuration · 3 recording · 70 bug
 * </pre>
 *
 * <p>Stopped with Ctrl-C the program ends with 130: that is Java's doing, {@link tautlog.desk.cli.Exits} is not asked.
 *
 * <p>Start at {@link tautlog.desk.cli.Tautlog}. Results go to the standard output, everything else to the standard error.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.cli;
