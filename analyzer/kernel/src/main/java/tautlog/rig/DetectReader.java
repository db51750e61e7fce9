package tautlog.rig;

import java.math.BigDecimal;
import tautlog.config.ConfigTable;
import tautlog.config.Range;
import tautlog.config.Reading;

/** Reads {@code [detect]}: the settings of {@code FINDINGS.md}, each with its default. */
final class DetectReader {
    /** The detectors look back 10 s at most. */
    private static final String LONGEST_WINDOW_SECONDS = "10";

    private static final String LONGEST_WAIT_SECONDS = "600";
    private static final DetectSettings DEFAULTS = DetectSettings.DEFAULTS;

    private final ConfigTable table;

    DetectReader(ConfigTable table) {
        this.table = table;
    }

    DetectSettings read() {
        return new DetectSettings(
                force("pull_from", DEFAULTS.pullFromNewtons()),
                window("pull_for", DEFAULTS.pullForSeconds()),
                wait("pull_end_after", DEFAULTS.pullEndAfterSeconds()),
                window("bridge", DEFAULTS.bridgeSeconds()),
                factor("overload_clear", "1", DEFAULTS.overloadClear()),
                wait("overload_quiet", DEFAULTS.overloadQuietSeconds()),
                force("slack_below", DEFAULTS.slackBelowNewtons()),
                window("slack_for", DEFAULTS.slackForSeconds()),
                window("shock_window", DEFAULTS.shockWindowSeconds()),
                factor("shock_from", "10", DEFAULTS.shockFrom()),
                factor("shock_factor", "100", DEFAULTS.shockFactor()),
                window("jolt_within", DEFAULTS.joltWithinSeconds()),
                factor("jolt_rise", "10", DEFAULTS.joltRise()),
                window("drop_within", DEFAULTS.dropWithinSeconds()),
                factor("drop_from", "10", DEFAULTS.dropFrom()),
                factor("drop_by", "1", DEFAULTS.dropBy()),
                factor("stall_to", "0.9", DEFAULTS.stallTo()),
                force("drift", DEFAULTS.driftNewtons()),
                factor("cycle_gate", "1", DEFAULTS.cycleGate()));
    }

    private BigDecimal force(String key, BigDecimal otherwise) {
        return table.optional(key, Reading.force()).map(f -> f.newtons()).orElse(otherwise);
    }

    private BigDecimal window(String key, BigDecimal otherwise) {
        return time(key, LONGEST_WINDOW_SECONDS, otherwise);
    }

    private BigDecimal wait(String key, BigDecimal otherwise) {
        return time(key, LONGEST_WAIT_SECONDS, otherwise);
    }

    private BigDecimal time(String key, String longest, BigDecimal otherwise) {
        return table.optional(key, Reading.time(longest)).map(t -> t.seconds()).orElse(otherwise);
    }

    private BigDecimal factor(String key, String greatest, BigDecimal otherwise) {
        return table.or(key, Reading.decimal(Range.aboveZeroTo(greatest)), otherwise);
    }
}
