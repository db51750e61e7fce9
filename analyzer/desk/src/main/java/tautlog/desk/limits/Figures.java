package tautlog.desk.limits;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** How shares and multiples look on the pages of limits and plans. */
public final class Figures {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private Figures() {}

    /** {@code 118 %}, rounded up: what is above 100 never shows as 100. */
    public static String percent(BigDecimal share) {
        return share.multiply(HUNDRED).setScale(0, RoundingMode.CEILING).toPlainString() + " %";
    }

    /** As {@link #percent(BigDecimal)}, with one decimal; {@code share} is finite. */
    static String percent(double share) {
        return new BigDecimal(share * 100).setScale(1, RoundingMode.CEILING).toPlainString() + " %";
    }

    /** {@code 1.73}. */
    public static String multiple(BigDecimal multiple) {
        return multiple.setScale(2, RoundingMode.HALF_UP).toPlainString();
    }
}
