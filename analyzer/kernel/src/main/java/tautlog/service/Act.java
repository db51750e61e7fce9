package tautlog.service;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What an entry of the ledger tells. */
public sealed interface Act {
    /** As in the ledger: {@code done}. */
    String kind();

    /** Whether believing it wrongly would show work or gear in a better light: it then counts only when it is certain. */
    default boolean reassures() {
        return false;
    }

    /** The gear it is about; empty when it is about none. */
    default Optional<GearPiece> subject() {
        return Optional.empty();
    }

    /** About gear. */
    sealed interface OnGear extends Act {
        GearPiece gear();

        /** Whether it puts the gear into service: then somebody must answer for it with a name, see {@link Entry#putsIntoService}. */
        default boolean putsIntoService() {
            return false;
        }

        @Override
        default Optional<GearPiece> subject() {
            return Optional.of(gear());
        }
    }

    /** A task was done. */
    record Done(String task) implements Act {
        @Override
        public String kind() {
            return "done";
        }

        @Override
        public boolean reassures() {
            return true;
        }
    }

    /**
     * A competent person looked at gear.
     *
     * @param figures what was counted or measured, by {@link InspectionFigure#key}
     * @param damage words of what was seen: {@code kink}, {@code heat}
     */
    record Inspected(GearPiece gear, Verdict verdict, Map<String, BigDecimal> figures, List<String> damage)
            implements OnGear {
        public Inspected {
            figures = Collections.unmodifiableMap(new TreeMap<>(figures));
            damage = List.copyOf(damage);
        }

        @Override
        public String kind() {
            return "inspected";
        }

        @Override
        public boolean putsIntoService() {
            return verdict == Verdict.BACK_IN_SERVICE;
        }

        @Override
        public boolean reassures() {
            return putsIntoService();
        }
    }

    /** Gear was taken into use, new or in place of other. */
    record Fitted(GearPiece gear) implements OnGear {
        @Override
        public String kind() {
            return "fitted";
        }

        @Override
        public boolean putsIntoService() {
            return true;
        }

        @Override
        public boolean reassures() {
            return true;
        }
    }

    /** Gear was taken away for good. */
    record Retired(GearPiece gear) implements OnGear {
        @Override
        public String kind() {
            return "retired";
        }

        @Override
        public boolean reassures() {
            return true;
        }
    }

    /** Gear must not be used until it was inspected. */
    record OutOfService(GearPiece gear) implements OnGear {
        @Override
        public String kind() {
            return "out-of-service";
        }
    }

    /**
     * The winch worked while nothing was recorded.
     *
     * @param from before {@code to}
     * @param shaftHours not longer than the span, see {@link #fits}; empty when nobody knows; so are the others
     */
    record Worked(
            Instant from,
            Instant to,
            Optional<BigDecimal> shaftHours,
            Optional<BigDecimal> pullHours,
            Optional<BigDecimal> pulls)
            implements Act {
        private static final BigDecimal NANOS_PER_HOUR =
                BigDecimal.valueOf(Duration.ofHours(1).toNanos());

        /** @throws IllegalArgumentException if {@code to} does not lie after {@code from}, or hours do not fit between them */
        public Worked {
            if (!from.isBefore(to)) {
                throw new IllegalArgumentException("work must end after it began, was from " + from + " to " + to);
            }
            if (shaftHours.filter(hours -> !fits(hours, from, to)).isPresent()
                    || pullHours.filter(hours -> !fits(hours, from, to)).isPresent()) {
                throw new IllegalArgumentException("hours must be from 0 to those from " + from + " to " + to
                        + ", were " + shaftHours + " of the shaft, " + pullHours + " in pulls");
            }
        }

        /** Whether so many hours can have passed from {@code from} to {@code to}; exact. */
        public static boolean fits(BigDecimal hours, Instant from, Instant to) {
            Duration span = Duration.between(from, to);
            BigDecimal nanos = BigDecimal.valueOf(span.getSeconds(), -9).add(BigDecimal.valueOf(span.getNano()));
            return hours.signum() >= 0 && hours.multiply(NANOS_PER_HOUR).compareTo(nanos) <= 0;
        }

        @Override
        public String kind() {
            return "worked";
        }
    }

    /** An earlier entry, that which {@link Entry#replaces} names, is taken back. */
    record Withdrawn() implements Act {
        @Override
        public String kind() {
            return "withdrawn";
        }
    }
}
