package tautlog.config;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Numbers that a setting may take.
 *
 * @param least the lower end
 * @param withLeast whether the lower end itself is allowed
 * @param greatest the upper end, itself allowed; empty when there is none
 */
public record Range(BigDecimal least, boolean withLeast, Optional<BigDecimal> greatest) {
    public static Range aboveZero() {
        return new Range(BigDecimal.ZERO, false, Optional.empty());
    }

    public static Range aboveZeroTo(String greatest) {
        return new Range(BigDecimal.ZERO, false, Optional.of(new BigDecimal(greatest)));
    }

    public static Range fromZero() {
        return new Range(BigDecimal.ZERO, true, Optional.empty());
    }

    public static Range between(String least, String greatest) {
        return new Range(new BigDecimal(least), true, Optional.of(new BigDecimal(greatest)));
    }

    public boolean contains(BigDecimal number) {
        int low = number.compareTo(least);
        return (withLeast ? low >= 0 : low > 0)
                && greatest.map(top -> number.compareTo(top) <= 0).orElse(true);
    }

    /** As a message says it: {@code above 0 to 1}, {@code from 0 to 180}. */
    @Override
    public String toString() {
        String from = least.toPlainString();
        String start = withLeast ? greatest.isPresent() ? "from " + from : from + " or more" : "above " + from;
        return start + greatest.map(top -> " to " + top.toPlainString()).orElse("");
    }
}
