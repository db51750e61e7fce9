package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;

/** Makes an outing that fails smaller as long as it goes on failing, so that a person can read what is left. */
final class Shrinker {
    private final Predicate<OutingData> fails;
    private int attemptsLeft;

    private Shrinker(Predicate<OutingData> fails, int attempts) {
        this.fails = fails;
        attemptsLeft = attempts;
    }

    static OutingData shrink(OutingData failing, Predicate<OutingData> fails, int attempts) {
        return new Shrinker(fails, attempts).shrink(failing);
    }

    private OutingData shrink(OutingData start) {
        OutingData data = start;
        OutingData before;
        do {
            before = data;
            data = drop(data, OutingData::shafts, OutingData::withShafts);
            data = drop(data, OutingData::hookups, OutingData::withHookups);
            data = drop(data, OutingData::inputs, OutingData::withInputs);
            data = drop(data, OutingData::frames, OutingData::withFrames);
            data = shorten(data);
            data = flatten(data);
        } while (!data.equals(before) && attemptsLeft > 0);
        return data;
    }

    /** Leaves out runs of entries: halves first, single ones last. */
    private <T> OutingData drop(
            OutingData start, Function<OutingData, List<T>> list, BiFunction<OutingData, List<T>, OutingData> with) {
        OutingData data = start;
        for (int run = list.apply(data).size(); run >= 1; run /= 2) {
            for (int at = 0; at + run <= list.apply(data).size(); ) {
                List<T> fewer = new ArrayList<>(list.apply(data));
                fewer.subList(at, at + run).clear();
                OutingData candidate = with.apply(data, fewer);
                if (stillFails(candidate)) {
                    data = candidate;
                } else {
                    at += run;
                }
            }
        }
        return data;
    }

    /** Cuts samples off the frames' ends; at the front the frame's number and tick move on. */
    private OutingData shorten(OutingData start) {
        OutingData data = start;
        for (int f = 0; f < data.frames().size(); f++) {
            for (int cut = data.frames().get(f).counts().size() / 2; cut >= 1; cut /= 2) {
                for (boolean front : new boolean[] {false, true}) {
                    OutingData.Frame frame = data.frames().get(f);
                    if (frame.counts().size() > cut) {
                        OutingData candidate = replace(data, f, shorter(data, frame, cut, front));
                        data = stillFails(candidate) ? candidate : data;
                    }
                }
            }
        }
        return data;
    }

    private static OutingData.Frame shorter(OutingData data, OutingData.Frame frame, int cut, boolean front) {
        List<Integer> counts = frame.counts();
        if (!front) {
            return new OutingData.Frame(
                    frame.number(), frame.tick(), frame.flags(), counts.subList(0, counts.size() - cut));
        }
        long ticks =
                cut * data.instrument().tickHz() * 1_000 / data.instrument().rateMillihertz();
        return new OutingData.Frame(
                frame.number() + cut, frame.tick() + ticks, frame.flags(), counts.subList(cut, counts.size()));
    }

    /** Makes all samples of a frame equal to one of them. */
    private OutingData flatten(OutingData start) {
        OutingData data = start;
        for (int f = 0; f < data.frames().size(); f++) {
            for (int count :
                    List.copyOf(new java.util.TreeSet<>(data.frames().get(f).counts()))) {
                OutingData.Frame frame = data.frames().get(f);
                var flat = java.util.Collections.nCopies(frame.counts().size(), count);
                if (new java.util.HashSet<>(frame.counts()).size() > 1) {
                    OutingData candidate =
                            replace(data, f, new OutingData.Frame(frame.number(), frame.tick(), frame.flags(), flat));
                    data = stillFails(candidate) ? candidate : data;
                }
            }
        }
        return data;
    }

    private static OutingData replace(OutingData data, int f, OutingData.Frame frame) {
        List<OutingData.Frame> frames = new ArrayList<>(data.frames());
        frames.set(f, frame);
        return data.withFrames(frames);
    }

    private boolean stillFails(OutingData candidate) {
        return attemptsLeft-- > 0 && fails.test(candidate);
    }

    /** The outing as a person would write it down. */
    static String text(OutingData data) {
        StringBuilder text = new StringBuilder();
        text.append(data.instrument()).append('\n');
        text.append(data.rig()).append('\n');
        text.append(data.calibration()).append('\n');
        for (OutingData.Frame frame : data.frames()) {
            text.append("frame ").append(frame.number()).append('-').append(frame.lastNumber());
            text.append(" tick ").append(frame.tick());
            text.append(frame.isOpenBridge() ? " open bridge " : " ")
                    .append(runs(frame.counts()))
                    .append('\n');
        }
        data.shafts().forEach(shaft -> text.append(shaft).append('\n'));
        data.inputs().forEach(input -> text.append(input).append('\n'));
        data.hookups().forEach(change -> text.append(change).append('\n'));
        return text.toString();
    }

    private static String runs(List<Integer> counts) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < counts.size(); ) {
            int run = 1;
            while (i + run < counts.size() && counts.get(i + run).equals(counts.get(i))) {
                run++;
            }
            text.append(counts.get(i)).append(run > 1 ? "x" + run : "").append(' ');
            i += run;
        }
        return text.toString().strip();
    }
}
