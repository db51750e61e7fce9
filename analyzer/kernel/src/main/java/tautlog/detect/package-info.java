/**
 * Streaming detectors: evidence in, findings out, as {@code analyzer/FINDINGS.md} defines.
 *
 * <pre>
 *   Evidence ──▶ {@link tautlog.detect.Detection} ──▶ runs of present samples, gaps ──▶ one detector per kind ──┐
 *                  │ pulses                                                                     ├──▶ {@link tautlog.detect.FindingSink}
 *                  └▶ ShaftSpeed ──▶ ShaftJoin (by tick) ──▶ pulls, stalls, drops, seconds ─────┘
 * </pre>
 *
 * <p>Beside them {@link tautlog.detect.SlackProof} watches for slack by which a zero may move; it finds nothing and tells who asks.
 *
 * <p>Start at {@link tautlog.detect.Detection}. Each detector is one file with one test. All compare counts with thresholds that
 * {@code Thresholds} works out once, exactly. A run carries its least and greatest count, so that a detector whose state they
 * cannot change does not look at the samples; while all are within {@code Quiet}, small frames join into one run. A fast replay hands over seconds at once ({@code Detection.passage}). The same code runs live and on replay; nothing here reads a clock, a file or a
 * port, and nothing is allocated per sample.
 */
@org.jspecify.annotations.NullMarked
package tautlog.detect;
