/** The command line of the program on the winch; each command is one class. */
@org.jspecify.annotations.NullMarked
package tautlog.logger.cli;
