package tautlog.service;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What an entry of the ledger tells. */
public sealed interface Act {
    /** As in the ledger: {@code done}. */
    String kind();

    /** Whether believing it wrongly would show work or gear in a better light: it then counts only when it is certain. */
    boolean reassures();

    /** The gear it is about; empty when it is about none. */
    default Optional<GearPiece> subject() {
        return Optional.empty();
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
            implements Act {
        public Inspected {
            figures = java.util.Collections.unmodifiableMap(new TreeMap<>(figures));
            damage = List.copyOf(damage);
        }

        @Override
        public String kind() {
            return "inspected";
        }

        @Override
        public boolean reassures() {
            return verdict == Verdict.BACK_IN_SERVICE;
        }

        @Override
        public Optional<GearPiece> subject() {
            return Optional.of(gear);
        }
    }

    /** Gear was taken into use, new or in place of other. */
    record Fitted(GearPiece gear) implements Act {
        @Override
        public String kind() {
            return "fitted";
        }

        @Override
        public boolean reassures() {
            return true;
        }

        @Override
        public Optional<GearPiece> subject() {
            return Optional.of(gear);
        }
    }

    /** Gear was taken away for good. */
    record Retired(GearPiece gear) implements Act {
        @Override
        public String kind() {
            return "retired";
        }

        @Override
        public boolean reassures() {
            return true;
        }

        @Override
        public Optional<GearPiece> subject() {
            return Optional.of(gear);
        }
    }

    /** Gear must not be used until it was inspected. */
    record OutOfService(GearPiece gear) implements Act {
        @Override
        public String kind() {
            return "out-of-service";
        }

        @Override
        public boolean reassures() {
            return false;
        }

        @Override
        public Optional<GearPiece> subject() {
            return Optional.of(gear);
        }
    }

    /**
     * The winch worked while nothing was recorded.
     *
     * @param from before {@code to}
     * @param shaftHours empty when nobody knows; so are the others
     */
    record Worked(
            Instant from,
            Instant to,
            Optional<BigDecimal> shaftHours,
            Optional<BigDecimal> pullHours,
            Optional<BigDecimal> pulls)
            implements Act {
        @Override
        public String kind() {
            return "worked";
        }

        @Override
        public boolean reassures() {
            return false;
        }
    }

    /** An earlier entry, that which {@link Entry#replaces} names, is taken back. */
    record Withdrawn() implements Act {
        @Override
        public String kind() {
            return "withdrawn";
        }

        @Override
        public boolean reassures() {
            return false;
        }
    }
}
