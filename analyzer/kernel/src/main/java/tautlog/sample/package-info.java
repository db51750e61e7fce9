/**
 * What one reading is: counts with a number, the tick at which they were taken, how they become newtons.
 *
 * <pre>
 *   logger.wire ──┐                         ┌──▶ recording (writer)
 *                 ├──▶ {@link tautlog.sample.Evidence} ──┤
 *   recording  ───┘    (one outing, in order) └──▶ detect (findings, seconds, hours)
 * </pre>
 *
 * <p>Start at {@link tautlog.sample.Evidence}: everything that an outing tells, as calls with primitives. The live
 * logger and a later replay make the same calls, so what stands behind cannot tell them apart. A fast replay hands over samples as they
 * are stored ({@link tautlog.sample.StoredCounts}), and seconds at once ({@link tautlog.sample.Passage}). Samples are numbered by
 * the instrument, so a gap is a jump in the number and is exact. {@link
 * tautlog.sample.OutingClock} dates ticks. Nothing here reads a clock, a file or a port.
 */
@org.jspecify.annotations.NullMarked
package tautlog.sample;
