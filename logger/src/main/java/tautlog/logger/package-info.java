/**
 * The program on the winch; nothing but its rooms stands here.
 *
 * <pre>
 *   {@code port} ──▶ {@code wire} ──▶ {@code live} ──▶ {@code recorder} ──▶ the recording
 *              ({@code clock})    └──▶ {@code beacon} ──▶ the lamp
 *   the recording ──▶ {@code publish} ──▶ brokers and servers
 *   {@code run} joins them; {@code cli}, {@code config} and {@code control} are what people and other programs touch
 *   {@code simulate} and {@code pty}: an instrument made of physics, for demo and tests
 * </pre>
 *
 * <p>Start at {@code tautlog.logger.cli}. Bytes of one instrument come in, a recording and a state of the lamp go out. Nothing
 * here knows the desk or decides what is a finding: that is the kernel's.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger;
