package tautlog.desk.plot;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the seconds of a drawing mean.
 *
 * @param zero the instant of second 0; empty when no clock is known, and then seconds count from the outing's start
 * @param zone in which times are written
 */
public record TimeAxis(Optional<Instant> zero, ZoneId zone) {
    private static final double[] STEPS = {
        1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400
    };
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    /** A place on the axis and what is written there. */
    public record Tick(double seconds, String label) {}

    /** At most {@code most} round times from {@code from} to {@code to}; none when even days are too many. */
    public List<Tick> ticks(double from, double to, int most) {
        for (double step : STEPS) {
            if ((to - from) / step < most) {
                return ticksEvery(step, from, to);
            }
        }
        return List.of();
    }

    private List<Tick> ticksEvery(double step, double from, double to) {
        double shift = localSecondOfDay();
        List<Tick> ticks = new ArrayList<>();
        for (double t = Math.ceil((from + shift) / step) * step - shift; t <= to; t += step) {
            ticks.add(new Tick(t, label(t, step)));
        }
        return ticks;
    }

    /** Seconds from local midnight to second 0, so that ticks stand at round local times. */
    private double localSecondOfDay() {
        return zero.map(instant -> ZonedDateTime.ofInstant(instant, zone))
                .map(local -> local.toLocalTime().toNanoOfDay() / 1e9)
                .orElse(0.0);
    }

    private String label(double seconds, double step) {
        if (zero.isPresent()) {
            Instant at = zero.get().plusMillis(Math.round(seconds * 1_000));
            return (step < 60 ? SECOND : MINUTE).format(at.atZone(zone));
        }
        long whole = Math.round(seconds);
        return step < 60 ? whole + " s" : String.format(Locale.ROOT, "%d:%02d min", whole / 60, whole % 60);
    }
}
