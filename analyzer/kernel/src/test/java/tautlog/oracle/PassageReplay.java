package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tautlog.detect.Detection;
import tautlog.detect.Known;
import tautlog.detect.ShaftReadings;
import tautlog.sample.Passage;
import tautlog.sample.PlainCounts;
import tautlog.sample.StoredCounts;

/** Tells an outing to the detectors in passages of every length, cut into runs at random; where they refuse one, frame by frame. */
final class PassageReplay {
    private final OutingData data;
    private final long shaftsEarlyTicks;
    private final Random random;
    private final Detection detection;
    private int nextShaft;
    private int nextInput;
    private int nextHookup;
    private List<Integer> rest = List.of();
    private long restFrom;
    private int taken;

    private PassageReplay(OutingData data, long seed, Detection detection) {
        this.data = data;
        this.detection = detection;
        random = new Random(seed);
        long second = data.instrument().tickHz();
        long[] early = {0, 0, second / 3, Long.MAX_VALUE / 2, -3 * second};
        shaftsEarlyTicks = RandomOutings.pick(random, early);
    }

    /**
     * @param answers without seconds: passages are for those who do not want them
     * @param slackIntervals how many intervals are known by bounds only
     */
    record Told(Answers answers, int passages, long slackIntervals) {}

    /** Takes intervals of a slack line together, now and then. */
    private static final class Listener extends Replay.Listener {
        private final Random random;

        Listener(long seed) {
            super(false);
            random = new Random(seed);
        }

        @Override
        public boolean slackIntervals(ShaftReadings readings, int atMost, Known clutch) {
            if (random.nextInt(5) == 0) {
                return false;
            }
            for (int i = 1; i < readings.size(); i++) {
                long ticks = readings.tick(i) - readings.tick(i - 1);
                interval(new Answers.Interval(ticks, readings.rpm(i - 1), Answers.Interval.SOME, atMost, clutch));
            }
            return true;
        }
    }

    /** @param oracle what the intervals are that are known by bounds only */
    static Told through(OutingData data, long seed, Answers oracle) {
        Listener listener = new Listener(seed);
        PassageReplay replay = new PassageReplay(
                data, seed, new Detection(data.instrument(), data.rig(), data.calibration(), listener));
        replay.tell();
        Answers answers = listener.answers();
        return new Told(answers.withKnownIntervalsOf(oracle), replay.taken, answers.boundedIntervals());
    }

    private void tell() {
        List<OutingData.Frame> frames = data.frames();
        for (int f = 0; f < frames.size(); ) {
            int end = endOfPassage(f);
            if (end > f) {
                tellPassage(frames.subList(f, end));
                f = end;
            } else {
                tellFrame(frames.get(f++));
            }
        }
        tellRest();
        tellShafts(Long.MAX_VALUE);
        tellChangesUpTo(Long.MAX_VALUE);
        detection.end();
    }

    /** The frame behind the passage that begins with frame {@code first}: {@code first} where there can be none. */
    private int endOfPassage(int first) {
        int most = random.nextInt(random.nextBoolean() ? 4 : 60);
        int end = first;
        int samples = rest.size();
        long next = rest.isEmpty() ? data.frames().get(first).number() : restFrom + rest.size();
        while (end < data.frames().size() && end - first < most) {
            OutingData.Frame frame = data.frames().get(end);
            samples += frame.counts().size();
            boolean fits = frame.number() == next && !frame.isOpenBridge() && samples <= Passage.MOST;
            if (!fits || changesUpTo(frame.lastNumber())) {
                break;
            }
            next = frame.lastNumber() + 1;
            end++;
        }
        return end;
    }

    private boolean changesUpTo(long number) {
        return (nextInput < data.inputs().size() && data.inputs().get(nextInput).atNumber() <= number)
                || (nextHookup < data.hookups().size()
                        && data.hookups().get(nextHookup).atNumber() <= number);
    }

    private void tellPassage(List<OutingData.Frame> frames) {
        OutingData.Frame last = frames.get(frames.size() - 1);
        long first = rest.isEmpty() ? frames.get(0).number() : restFrom;
        List<Integer> counts = new ArrayList<>(rest);
        frames.forEach(frame -> counts.addAll(frame.counts()));
        int stickingOut =
                random.nextBoolean() ? 0 : random.nextInt(last.counts().size());
        int n = Math.max(1, counts.size() - stickingOut);
        int endShaft = shaftsBefore(last.tick());
        Cut passage = new Cut(first, frames, data.shafts().subList(nextShaft, endShaft), runs(counts.subList(0, n)));
        rest = List.copyOf(counts.subList(n, counts.size()));
        restFrom = first + n;
        if (detection.passage(passage)) {
            taken++;
            nextShaft = endShaft;
            return;
        }
        for (OutingData.Frame frame : frames) {
            tellShafts(frame.tick());
            detection.frame(
                    frame.number(), frame.tick(), frame.flags(), frame.counts().size());
        }
        tellRuns(first, passage.pieces);
    }

    private List<StoredCounts> runs(List<Integer> counts) {
        List<StoredCounts> runs = new ArrayList<>();
        int[] all = counts.stream().mapToInt(Integer::intValue).toArray();
        int most = random.nextBoolean() ? StoredCounts.MOST : 1 + random.nextInt(9);
        for (int from = 0; from < all.length; ) {
            int n = Math.min(1 + random.nextInt(most), all.length - from);
            runs.add(PlainCounts.copyOf(all, from, n));
            from += n;
        }
        return runs;
    }

    private void tellRuns(long first, List<StoredCounts> runs) {
        long number = first;
        for (StoredCounts run : runs) {
            detection.run(number, run);
            number += run.size();
        }
    }

    private void tellRest() {
        tellRuns(restFrom, runs(rest));
        rest = List.of();
    }

    private void tellFrame(OutingData.Frame frame) {
        tellRest();
        tellShafts(frame.tick());
        tellChangesUpTo(frame.lastNumber());
        detection.frame(
                frame.number(), frame.tick(), frame.flags(), frame.counts().size());
        if (!frame.isOpenBridge()) {
            tellRuns(frame.number(), runs(frame.counts()));
        }
    }

    private int shaftsBefore(long tick) {
        int end = nextShaft;
        while (end < data.shafts().size() && data.shafts().get(end).tick() - shaftsEarlyTicks <= tick) {
            end++;
        }
        return end;
    }

    private void tellShafts(long tick) {
        int end = shaftsBefore(tick);
        for (; nextShaft < end; nextShaft++) {
            OutingData.ShaftFrame shaft = data.shafts().get(nextShaft);
            detection.shaft(
                    shaft.tick(),
                    shaft.pulses(),
                    shaft.pulseTicks().stream().mapToLong(Long::longValue).toArray(),
                    shaft.pulseTicks().size());
        }
    }

    private void tellChangesUpTo(long number) {
        while (nextInput < data.inputs().size() && data.inputs().get(nextInput).atNumber() <= number) {
            OutingData.Input input = data.inputs().get(nextInput++);
            detection.input(input.atNumber(), 0, 0, input.present(), input.state());
        }
        while (nextHookup < data.hookups().size()
                && data.hookups().get(nextHookup).atNumber() <= number) {
            OutingData.HookupChange change = data.hookups().get(nextHookup++);
            detection.hookup(change.atNumber(), change.id(), change.by());
        }
    }

    private record Cut(
            long first, List<OutingData.Frame> list, List<OutingData.ShaftFrame> shafts, List<StoredCounts> pieces)
            implements Passage {
        @Override
        public int frames() {
            return list.size();
        }

        @Override
        public long frameNumber(int frame) {
            return list.get(frame).number();
        }

        @Override
        public long frameTick(int frame) {
            return list.get(frame).tick();
        }

        @Override
        public int frameLength(int frame) {
            return list.get(frame).counts().size();
        }

        @Override
        public int shaftFrames() {
            return shafts.size();
        }

        @Override
        public long shaftTick(int shaftFrame) {
            return shafts.get(shaftFrame).tick();
        }

        @Override
        public long pulses(int shaftFrame) {
            return shafts.get(shaftFrame).pulses();
        }

        @Override
        public long[] pulseTicks() {
            return shafts.stream()
                    .flatMap(shaft -> shaft.pulseTicks().stream())
                    .mapToLong(Long::longValue)
                    .toArray();
        }

        @Override
        public int pulsesFrom(int shaftFrame) {
            return shafts.subList(0, shaftFrame).stream()
                    .mapToInt(shaft -> shaft.pulseTicks().size())
                    .sum();
        }

        @Override
        public int pulsesIn(int shaftFrame) {
            return shafts.get(shaftFrame).pulseTicks().size();
        }

        @Override
        public int samples() {
            return pieces.stream().mapToInt(StoredCounts::size).sum();
        }

        @Override
        public int runs() {
            return pieces.size();
        }

        @Override
        public StoredCounts run(int run) {
            return pieces.get(run);
        }

        @Override
        public int least() {
            return pieces.stream().mapToInt(StoredCounts::least).min().orElseThrow();
        }

        @Override
        public int greatest() {
            return pieces.stream().mapToInt(StoredCounts::greatest).max().orElseThrow();
        }
    }
}
