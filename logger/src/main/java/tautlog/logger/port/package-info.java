/**
 * The serial line to the instrument; the only room that knows the serial library.
 *
 * <pre>
 *   run.LineReader ──▶ {@link tautlog.logger.port.InstrumentPort} ──open──▶ {@link tautlog.logger.port.InstrumentLine}
 *                             ▲                                   ▲
 *                       SerialInstrumentPort ── jSerialComm ── SerialLine
 *                             ▲
 *                       PortSearch ◀── {@link tautlog.logger.port.PortListing}: where is it now?
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.port.InstrumentPort}: where a line can be opened, again and again. A line is read by one
 * thread and written by another; closing it frees both. Nothing here knows what the bytes mean.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.port;
