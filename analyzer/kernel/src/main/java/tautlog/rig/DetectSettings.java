package tautlog.rig;

import java.math.BigDecimal;

/**
 * The settings of {@code FINDINGS.md}, the {@code [detect]} section of a rig. Names ending in {@code Newtons} are forces,
 * in {@code Seconds} times, the others factors; all are exact decimals above 0.
 */
public record DetectSettings(
        BigDecimal pullFromNewtons,
        BigDecimal pullForSeconds,
        BigDecimal pullEndAfterSeconds,
        BigDecimal bridgeSeconds,
        BigDecimal overloadClear,
        BigDecimal overloadQuietSeconds,
        BigDecimal slackBelowNewtons,
        BigDecimal slackForSeconds,
        BigDecimal shockWindowSeconds,
        BigDecimal shockFrom,
        BigDecimal shockFactor,
        BigDecimal joltWithinSeconds,
        BigDecimal joltRise,
        BigDecimal dropWithinSeconds,
        BigDecimal dropFrom,
        BigDecimal dropBy,
        BigDecimal stallTo,
        BigDecimal driftNewtons,
        BigDecimal cycleGate) {

    /** The defaults of {@code FINDINGS.md}. */
    public static final DetectSettings DEFAULTS = new DetectSettings(
            d("1500"), d("0.3"), d("3"), d("0.25"), d("0.95"), d("0.5"), d("750"), d("0.1"), d("0.5"), d("0.15"),
            d("2.0"), d("0.2"), d("0.2"), d("0.15"), d("0.10"), d("0.8"), d("0.7"), d("200"), d("0.02"));

    private static BigDecimal d(String decimal) {
        return new BigDecimal(decimal);
    }
}
