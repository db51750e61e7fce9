/** The program on the winch. Start at {@code tautlog.logger.cli}. */
@org.jspecify.annotations.NullMarked
package tautlog.logger;
