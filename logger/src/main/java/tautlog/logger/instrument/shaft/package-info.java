/**
 * The shaft's pulses from a framed instrument on a port of its own, joined to another instrument's outing.
 *
 * <pre>
 *   second port ──▶ run.LineReader (thread "shaft") ──▶ {@link tautlog.logger.instrument.shaft.ShaftSource} ── bounded queue ─┐
 *                                                        ticks ▶ this computer's time (SteadyOffset)        │
 *   first port ──▶ any InstrumentFeed ──▶ {@link tautlog.logger.instrument.shaft.ShaftedFeed} ◀─────────────────────────────────┘
 *                                          time ▶ the outing's ticks (SteadyOffset), Evidence.shaft
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.instrument.shaft.ShaftSource}. Only the host's clock joins the two. Each side's time is taken
 * from its least late frames, so what remains is the difference of the two lines' least delays: sending a frame (some
 * milliseconds), a USB converter (up to 16 ms, common practice), and on the side of a text or Modbus instrument the time that the
 * device takes to measure and to send. Between two framed instruments count on 50 ms; beside an indicator on the
 * time of one or two of its readings, and in an outing's first minute on what its first frame was late. Speeds come from the
 * shaft's own ticks and are off by two thousandths at most while a better offset is moved to.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.instrument.shaft;
