/**
 * A satellite receiver on a port of its own: NMEA 0183, sentences RMC and GGA of any talker.
 *
 * <pre>
 *   bytes ──▶ {@link tautlog.logger.gps.GpsReceiver} ──▶ NmeaSentence (checksum) ──▶ RMC, GGA ──▶ {@link tautlog.logger.gps.GpsFix}
 *   (its own thread)   └─▶ counts of what was not taken, by kind              (latest only; any thread, a second's age shown)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.gps.GpsReceiver}. A parser of our own, because what matters here is what is refused: without
 * a right checksum, a valid status and fields in their ranges there is no position and no time. Nothing here reads a clock or a
 * port: bytes and times are arguments.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.gps;
