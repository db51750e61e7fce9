/**
 * What a machine has worked: hour meters and load bands.
 *
 * <pre>
 *   detect ──findings, shaft readings──▶ {@link tautlog.usage.Hours} ──one outing──▶ {@link tautlog.usage.MeterReading} ──plus──▶ a day, a season
 *   detect ──findings, cycles, shaft──▶ {@link tautlog.usage.MachineMeter} ──one outing──▶ {@link tautlog.usage.MachineUse} ──plus──▶ a season
 *   samples ──{@link tautlog.usage.ShareMeter}──────────────┘                      gear, ropes, driveline
 * </pre>
 *
 * <p>Start at {@link tautlog.usage.Hours} for the hours, at {@link tautlog.usage.MachineMeter} for what gear, rope and driveline bore. Meters
 * are counted in whole samples, ticks and nanoseconds and become hours only when read. Nothing here reads a clock or a file.
 */
@org.jspecify.annotations.NullMarked
package tautlog.usage;
