/**
 * Ties the instrument's ticks to UTC, as fixes in the evidence; the tick is kept, so a time can be derived again.
 *
 * <pre>
 *   host, receiver ──▶ BoardClock: believed?
 *                          ▼
 *   HELLO tick + host time ──▶ HostClock   ──┐
 *                                            ├──▶ Evidence.clock ──▶ recording ──▶ OutingClock: tick ▶ UTC
 *   start_utc + first sample ▶ DeviceClock ──┘
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.clock.TickDating}. Nothing here reads a clock: times are arguments.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.clock;
