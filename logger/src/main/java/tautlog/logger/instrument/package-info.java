/**
 * What stands at the port: bytes become an outing's evidence, whatever kind of instrument sends them.
 *
 * <pre>
 *                  bytes, time                       calls, in one thread
 *   run.Intake ──────────────▶ {@link tautlog.logger.instrument.InstrumentFeed} ──────────────────────▶ wire.OutingSink, sample.Evidence
 *                                    ▲  ▲  ▲         counts by kind of fault
 *        FramedFeed ─────────────────┘  │  │         wire.FrameDecoder, wire.OutingAssembler, the lamp
 *        text.TextFeed ─────────────────┘  │         lines   ─┐
 *        modbus.ModbusFeed ────────────────┘         replies ─┴─▶ {@link tautlog.logger.instrument.ReadingOuting}: tick, number, boot
 *        shaft.ShaftedFeed (another feed, and pulses from a second port)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.instrument.InstrumentFeed}. A reading that is not certain is counted by its kind of fault
 * and left out: there is then no number, never a wrong one. No feed reads a clock, except the one that has to ask its
 * device in time.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.instrument;
