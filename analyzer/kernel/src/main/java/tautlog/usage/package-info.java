/**
 * What a machine has worked: hour meters and load bands.
 *
 * <pre>
 *   detect ──findings, shaft readings──▶ {@link tautlog.usage.Hours} ──one outing──▶ {@link tautlog.usage.MeterReading} ──plus──▶ a day, a season
 * </pre>
 *
 * <p>Start at {@link tautlog.usage.Hours}. Meters are counted in whole samples and ticks and become hours only when read. Nothing
 * here reads a clock or a file.
 */
@org.jspecify.annotations.NullMarked
package tautlog.usage;
