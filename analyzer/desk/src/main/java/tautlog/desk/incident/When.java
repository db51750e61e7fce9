package tautlog.desk.incident;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import tautlog.desk.report.Moment;

/** A moment that somebody asks for: by the clock, or in an outing that has none. */
public sealed interface When {
    /** Empty where no clock tells it. */
    Optional<Instant> utc();

    /** Which outing it lies in, from 1, where no clock tells it. */
    OptionalLong inOuting();

    /** How long after that outing's first sample; empty where a clock tells it. */
    OptionalDouble secondsInOuting();

    /** Whether some of what lasts from {@code start} to {@code end}, both included, lies so close to it. */
    boolean holds(Moment start, Moment end, double aroundSeconds);

    /** For a head or a message, without a full stop. */
    String words();

    /** By the clock. What has no time is never close to it. */
    record At(Instant at) implements When {
        @Override
        public Optional<Instant> utc() {
            return Optional.of(at);
        }

        @Override
        public OptionalLong inOuting() {
            return OptionalLong.empty();
        }

        @Override
        public OptionalDouble secondsInOuting() {
            return OptionalDouble.empty();
        }

        @Override
        public boolean holds(Moment start, Moment end, double aroundSeconds) {
            long nanos = Math.round(aroundSeconds * 1e9);
            return start.utc().filter(utc -> !utc.isAfter(at.plusNanos(nanos))).isPresent()
                    && end.utc()
                            .filter(utc -> !utc.isBefore(at.minusNanos(nanos)))
                            .isPresent();
        }

        @Override
        public String words() {
            return at.toString();
        }
    }

    /**
     * In an outing whose clock was never known.
     *
     * @param outing its place in the history, from 1
     * @param seconds since its first sample
     */
    record IntoOuting(int outing, double seconds) implements When {
        @Override
        public Optional<Instant> utc() {
            return Optional.empty();
        }

        @Override
        public OptionalLong inOuting() {
            return OptionalLong.of(outing);
        }

        @Override
        public OptionalDouble secondsInOuting() {
            return OptionalDouble.of(seconds);
        }

        @Override
        public boolean holds(Moment start, Moment end, double aroundSeconds) {
            return start.outing() == outing
                    && start.seconds() <= seconds + aroundSeconds
                    && end.seconds() >= seconds - aroundSeconds;
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "%.1f s into outing %d", seconds, outing);
        }
    }
}
