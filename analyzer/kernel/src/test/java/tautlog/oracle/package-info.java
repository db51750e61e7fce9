/**
 * The slow and obvious reading of {@code analyzer/FINDINGS.md}, and the tests that hold the streaming detectors to it.
 *
 * <pre>
 *   RandomOutings ──▶ {@link tautlog.oracle.OutingData} ──┬──▶ {@link tautlog.oracle.Oracle} (whole arrays) ──▶ Answers ──┐
 *   ScriptedPull  ──▶                                     └──▶ Replay ──▶ Detection ──▶ Answers ──┴──▶ equal, to the sample
 * </pre>
 *
 * <p>Start at {@link tautlog.oracle.Oracle}: one method for each paragraph of the page, in its order. It shares nothing with
 * {@code tautlog.detect} but the records for findings and seconds: every comparison is made in exact decimals or fractions, every
 * definition is looked up in the whole outing, and nothing is remembered from sample to sample that the page does not name.
 */
@org.jspecify.annotations.NullMarked
package tautlog.oracle;
