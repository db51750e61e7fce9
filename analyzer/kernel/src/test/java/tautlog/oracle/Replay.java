package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.sample.Evidence;
import tautlog.sample.Tally;

/** Tells an outing to the streaming detectors, in any order that {@link Evidence} allows, and writes down what they say. */
final class Replay {
    /** How SHAFT frames and samples are interleaved. */
    enum Order {
        BY_TICK,
        SHAFT_FIRST,
        SHAFT_LATE,
        SHUFFLED
    }

    /** {@link Evidence} allows 10 s. */
    private static final long LATEST_SECONDS = 9;

    private final OutingData data;
    private final Order order;
    private final Random random;
    private final Evidence evidence;
    private int nextShaft;
    private int nextInput;
    private int nextHookup;

    private Replay(OutingData data, Order order, Evidence evidence) {
        this.data = data;
        this.order = order;
        this.evidence = evidence;
        random = new Random(data.frames().size() + 31L * data.shafts().size());
    }

    static Answers through(OutingData data, Order order) {
        return through(data, order, (d, sink) -> new Detection(d.instrument(), d.rig(), d.calibration(), sink));
    }

    static Answers through(OutingData data, Order order, BiFunction<OutingData, FindingSink, Evidence> detectors) {
        Listener listener = new Listener(true);
        new Replay(data, order, detectors.apply(data, listener)).tell();
        return listener.answers();
    }

    private void tell() {
        // nothing that counts is said here; it must disturb nothing
        evidence.clock(0, 1_700_000_000_000_000L);
        for (int f = 0; f < data.frames().size(); f++) {
            OutingData.Frame frame = data.frames().get(f);
            tellShaftsBefore(f);
            tellChangesUpTo(frame.lastNumber());
            // the array belongs to the caller: another offset each time, and rubbish on both sides of the frame
            int from = f % 3;
            int[] counts = new int[from + frame.counts().size() + 2];
            java.util.Arrays.fill(counts, 7_654_321);
            for (int k = 0; k < frame.counts().size(); k++) {
                counts[from + k] = frame.counts().get(k);
            }
            evidence.tension(
                    frame.number(),
                    frame.tick(),
                    frame.flags(),
                    counts,
                    from,
                    frame.counts().size());
            java.util.Arrays.fill(counts, -7_654_321);
            if (f % 5 == 0) {
                evidence.mark(frame.lastNumber(), "");
                evidence.health(frame.tick(), 4_987, -125, 0);
            }
        }
        tellShaftsBefore(data.frames().size());
        tellChangesUpTo(Long.MAX_VALUE);
        evidence.tally(Tally.NONE);
        evidence.end();
    }

    private void tellShaftsBefore(int frame) {
        boolean isLast = frame == data.frames().size();
        while (nextShaft < data.shafts().size()
                && (isLast || isDue(data.frames().get(frame)))) {
            OutingData.ShaftFrame shaft = data.shafts().get(nextShaft++);
            long[] ticks = java.util.Arrays.copyOf(
                    shaft.pulseTicks().stream().mapToLong(Long::longValue).toArray(),
                    shaft.pulseTicks().size() + 1);
            evidence.shaft(
                    shaft.tick(), shaft.pulses(), ticks, shaft.pulseTicks().size());
        }
    }

    /** A SHAFT frame comes before any frame of samples that begins more than {@link #LATEST_SECONDS} after it. */
    private boolean isDue(OutingData.Frame frame) {
        long shaftTick = data.shafts().get(nextShaft).tick();
        boolean isLate =
                frame.tick() - shaftTick > LATEST_SECONDS * data.instrument().tickHz();
        return switch (order) {
            case SHAFT_FIRST -> true;
            case SHAFT_LATE -> isLate;
            case BY_TICK -> shaftTick <= frame.tick();
            case SHUFFLED -> isLate || random.nextInt(3) > 0;
        };
    }

    /** "They come before the first sample with that number or a later one." */
    private void tellChangesUpTo(long number) {
        while (nextInput < data.inputs().size() && data.inputs().get(nextInput).atNumber() <= number) {
            OutingData.Input input = data.inputs().get(nextInput++);
            evidence.input(input.atNumber(), 0, 0, input.present(), input.state());
        }
        while (nextHookup < data.hookups().size()
                && data.hookups().get(nextHookup).atNumber() <= number) {
            OutingData.HookupChange change = data.hookups().get(nextHookup++);
            evidence.hookup(change.atNumber(), change.id(), change.by());
        }
    }

    /** Writes down what is told. */
    static class Listener implements FindingSink {
        private final boolean takesSeconds;
        private final List<Finding> findings = new ArrayList<>();
        private final List<Second> seconds = new ArrayList<>();
        private final List<Answers.Cycle> cycles = new ArrayList<>();
        private final List<Answers.Reading> readings = new ArrayList<>();
        private final List<Answers.Interval> intervals = new ArrayList<>();

        Listener(boolean takesSeconds) {
            this.takesSeconds = takesSeconds;
        }

        @Override
        public boolean takesSeconds() {
            return takesSeconds;
        }

        @Override
        public void finding(Finding finding) {
            findings.add(finding);
        }

        @Override
        public void second(Second second) {
            seconds.add(second);
        }

        @Override
        public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
            cycles.add(new Answers.Cycle(rangeCounts, twiceMeanCounts, halves));
        }

        @Override
        public void shaftReading(long tick, double rpm) {
            readings.add(new Answers.Reading(tick, rpm));
        }

        @Override
        public void shaftInterval(long ticks, double rpm, int samples, GreatestCount greatest, Known clutch) {
            // "meaningless when there are none"
            int exactly = samples > 0 ? greatest.exactly() : 0;
            if (samples > 0 && greatest.atMost() < exactly) {
                throw new IllegalStateException(greatest.atMost() + " is no bound of " + exactly);
            }
            interval(new Answers.Interval(ticks, rpm, samples, exactly, clutch));
        }

        void interval(Answers.Interval interval) {
            intervals.add(interval);
        }

        Answers answers() {
            findings.sort(Oracle.LISTED);
            cycles.sort(Oracle.CYCLES);
            return new Answers(findings, seconds, cycles, readings, intervals);
        }
    }
}
