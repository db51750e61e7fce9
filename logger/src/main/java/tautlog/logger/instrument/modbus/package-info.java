/**
 * A Modbus RTU transmitter that is asked for each reading; the only room that knows the Modbus library.
 *
 * <pre>
 *   Poller (thread) ── request ──▶ port.InstrumentLine ──▶ the device
 *      ▲   asked, answered, time up                             │ answer
 *   Exchange ◀── bytes ── {@link tautlog.logger.instrument.modbus.ModbusFeed} ◀── run.Intake ◀──┘
 *      └── RegisterQuestion (frames, checksums: the library's) ──▶ RegisterValue ──▶ Trust ──▶ ReadingOuting
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.instrument.modbus.ModbusFeed}. The poller only writes and waits; samples are told by the
 * reader thread. A question is asked when the one before was answered or its time was up and the line has been quiet
 * since: an answer that comes within the silence is never taken for the next one's. A value of two registers counts only when the
 * configuration proves the order of its words ({@link tautlog.logger.config.WordOrderProof}).
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.instrument.modbus;
