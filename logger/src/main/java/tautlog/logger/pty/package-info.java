/**
 * A serial line made of software: a pseudo-terminal of the Linux kernel, one end ours, the other a port for a logger.
 *
 * <pre>
 *   simulate, tests ──▶ {@link tautlog.logger.pty.PseudoTerminal} ══▶ /dev/pts/N ◀── a link of a chosen name
 *                 ◀──   (our end)           ◀══  (the port that a logger opens)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.pty.PseudoTerminal}. The libc is called through JNA, only here. Nothing here knows
 * what the bytes mean.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.pty;
