package tautlog.rig;

import java.math.BigDecimal;

/** What is left of a sling's straight rating when it is choked round something. */
final class Choking {
    /** ASME B30.9 practice gives 75 to 80 % of the straight rating; the lower is taken. */
    static final BigDecimal FACTOR = new BigDecimal("0.75");

    private static final BigDecimal UNREDUCED = new BigDecimal("120");
    private static final String[][] BY_ANGLE = {
        {"120", "1"}, {"90", "0.87"}, {"60", "0.74"}, {"30", "0.62"}, {"0", "0.49"}
    };

    private Choking() {}

    /** Below this angle of choke the rating shrinks; exactly 120 degrees is not below. */
    static boolean isSharp(BigDecimal degrees) {
        return degrees.compareTo(UNREDUCED) < 0;
    }

    /**
     * Fraction of the choker rating for rope and web, ASME B30.9: 120 degrees and more 1, from 90 0.87, from 60 0.74, from 30
     * 0.62, below 0.49. Not for chain, which has no published factor below 120 degrees.
     */
    static BigDecimal angleFactor(BigDecimal degrees) {
        for (String[] row : BY_ANGLE) {
            if (degrees.compareTo(new BigDecimal(row[0])) >= 0) {
                return new BigDecimal(row[1]);
            }
        }
        throw new IllegalArgumentException("degrees must be 0 or more, was " + degrees);
    }
}
