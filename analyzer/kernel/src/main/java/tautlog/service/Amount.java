package tautlog.service;

import java.util.OptionalDouble;

/**
 * An amount that may be known in part only.
 *
 * @param least from 0: that much there was
 * @param greatest not below {@code least}: more there was not; empty when nobody knows
 */
public record Amount(double least, OptionalDouble greatest) {
    public static final Amount NONE = known(0);
    public static final Amount UNKNOWN = atLeast(0);

    /** Chosen: sums of hours differ in their last digits. */
    private static final double ROUNDING = 1e-9;

    public Amount {
        if (!(least >= 0) || !(greatest.orElse(least) >= least)) {
            throw new IllegalArgumentException("an amount must be from 0 up, was " + least + " to " + greatest);
        }
    }

    public static Amount known(double amount) {
        return new Amount(amount, OptionalDouble.of(amount));
    }

    public static Amount between(double least, double greatest) {
        return new Amount(least, OptionalDouble.of(greatest));
    }

    public static Amount atLeast(double least) {
        return new Amount(least, OptionalDouble.empty());
    }

    public Amount plus(Amount other) {
        return new Amount(
                least + other.least,
                greatest.isPresent() && other.greatest.isPresent()
                        ? OptionalDouble.of(greatest.getAsDouble() + other.greatest.getAsDouble())
                        : OptionalDouble.empty());
    }

    /** What may have been and is not certain. */
    Amount perhaps() {
        return new Amount(0, greatest);
    }

    public boolean isKnown() {
        return greatest.isPresent() && greatest.getAsDouble() - least <= ROUNDING;
    }
}
