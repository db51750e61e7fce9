package tautlog.oracle;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tautlog.detect.Finding.ShaftAfterDrop;

/** Shaft readings: from wire.md's formula, and as the paragraphs Pull, Drop and Stall use them. Speeds are exact. */
final class ShaftSpeed {
    static final Fraction TURNING = Fraction.of(60, 1);

    private final Line line;
    private final List<Reading> readings = new ArrayList<>();

    /** @param place of the sample it sits at; below 0 when it sits before the first */
    record Reading(long tick, Fraction rpm, int place) {
        boolean isTurning() {
            return rpm.compareTo(TURNING) >= 0;
        }
    }

    ShaftSpeed(Line line) {
        this.line = line;
        readAll();
    }

    List<Reading> readings() {
        return readings;
    }

    List<Answers.Reading> told() {
        return readings.stream()
                .map(r -> new Answers.Reading(r.tick(), r.rpm().value()))
                .toList();
    }

    private long tickHz() {
        return line.data.instrument().tickHz();
    }

    /** "one per SHAFT frame, frames less than 50 ms after the last reading give none". */
    private void readAll() {
        List<OutingData.ShaftFrame> frames = line.data.shafts();
        List<Long> train = new ArrayList<>();
        long trainFrom = 0;
        for (int f = 0; f < frames.size(); f++) {
            OutingData.ShaftFrame frame = frames.get(f);
            // "The first SHAFT frame of an outing comes after a gap in the pulse train"; "A jump in pulses beyond n is
            // a gap".
            if (f == 0
                    || frame.pulses() - frames.get(f - 1).pulses()
                            > frame.pulseTicks().size()) {
                train.clear();
                trainFrom = frame.tick();
            }
            train.addAll(frame.pulseTicks());
            if (readings.isEmpty()
                    || 20 * (frame.tick() - readings.get(readings.size() - 1).tick()) >= tickHz()) {
                Optional<Fraction> rpm = rpm(frame.tick(), train, trainFrom);
                rpm.ifPresent(speed -> readings.add(new Reading(frame.tick(), speed, placeAt(frame.tick()))));
            }
        }
    }

    /**
     * wire.md: "Shaft speed at time t = 60 · tick_hz / (t_m − t_(m − ppr)), over one whole revolution …; t_m the latest pulse at or
     * before t; but never more than 60 · tick_hz / (ppr · (t − t_m)), and 0 when t − t_m > 1 s".
     *
     * <p>"with fewer than one revolution of known pulses since a gap in the pulse train there is no reading, except 0 when the last
     * pulse (or, with none, the first SHAFT frame after the gap) is more than 1 s ago."
     */
    private Optional<Fraction> rpm(long t, List<Long> train, long trainFrom) {
        int ppr = line.data.instrument().pulsesPerRevolution();
        if (ppr == 0) {
            return Optional.empty();
        }
        long lastPulse = train.isEmpty() ? trainFrom : train.get(train.size() - 1);
        if (t - lastPulse > tickHz()) {
            return Optional.of(Fraction.ZERO);
        }
        if (train.size() < ppr + 1) {
            return Optional.empty();
        }
        Fraction overOneTurn = Fraction.of(60 * tickHz(), lastPulse - train.get(train.size() - 1 - ppr));
        return Optional.of(
                t == lastPulse ? overOneTurn : overOneTurn.min(Fraction.of(60 * tickHz(), ppr * (t - lastPulse))));
    }

    /** "A shaft reading at tick t sits at the latest present sample with a tick ≤ t (… before the first sample sits before it)". */
    private int placeAt(long t) {
        int place = line.size - 1;
        while (place >= 0 && line.tick[place] > t) {
            place--;
        }
        return place;
    }

    /**
     * "it speaks for the sample numbers after the one it sits at, up to and including the one the next reading sits at, but for at
     * most N(1 s) numbers."
     *
     * @return of the numbers from {@code start} to {@code end}, those for which a turning or a standing reading speaks
     */
    long samplesSpokenFor(long start, long end, boolean turning) {
        long sum = 0;
        for (int r = 0; r < readings.size(); r++) {
            if (readings.get(r).isTurning() == turning) {
                long after = numberAt(readings.get(r));
                long last = after + line.samplesIn("1");
                if (r + 1 < readings.size()) {
                    last = Math.min(last, numberAt(readings.get(r + 1)));
                }
                sum += Math.max(0, Math.min(last, end) - Math.max(after + 1, start) + 1);
            }
        }
        return sum;
    }

    private long numberAt(Reading reading) {
        return reading.place() < 0 ? line.first() - 1 : line.number[reading.place()];
    }

    List<Reading> within(long fromTick, long toTick) {
        List<Reading> within = new ArrayList<>();
        for (Reading reading : readings) {
            if (fromTick <= reading.tick() && reading.tick() <= toTick) {
                within.add(reading);
            }
        }
        return within;
    }

    /** "the median of an even number averages the middle two". */
    static Fraction median(List<Reading> some) {
        List<Fraction> sorted = some.stream().map(Reading::rpm).sorted().toList();
        Fraction sum = sorted.get((sorted.size() - 1) / 2).plus(sorted.get(sorted.size() / 2));
        return sum.times(new Fraction(BigInteger.ONE, BigInteger.TWO));
    }

    /** "before = readings with tick in (t_i − 1 s, t_i], after = (t_i, t_i + 1 s]"; then "the first that holds of …". */
    ShaftAfterDrop afterDrop(long tickOfStart) {
        List<Reading> before = within(tickOfStart - tickHz() + 1, tickOfStart);
        List<Reading> after = within(tickOfStart + 1, tickOfStart + tickHz());
        if (before.size() < 5 || after.size() < 5) {
            return ShaftAfterDrop.UNKNOWN;
        }
        Fraction median = median(before);
        Stream<Fraction> speeds = after.stream().map(Reading::rpm);
        if (median.compareTo(TURNING) < 0) {
            return ShaftAfterDrop.STILL;
        }
        if (after.stream().anyMatch(r -> !r.isTurning())) {
            return ShaftAfterDrop.STOPPED;
        }
        Fraction fast = median.times(Fraction.of(11, 10));
        return speeds.anyMatch(rpm -> rpm.compareTo(fast) > 0) ? ShaftAfterDrop.RAN_UP : ShaftAfterDrop.KEPT_TURNING;
    }
}
