package tautlog.detect;

import java.util.ArrayDeque;
import java.util.Deque;
import tautlog.sample.Instrument;

/**
 * Finds drops. Source: {@code FINDINGS.md}, Drop.
 *
 * <p>A drop is told when it is known whether the line stays slack and, from the shaft's readings, what the shaft did.
 */
final class DropDetector implements Detector {
    /** Samples that are looked at one by one when least and greatest do not say enough: so few that a steady fall says enough. */
    private static final int PIECE = 32;

    private final Thresholds thresholds;
    private final Relations relations;
    private final CountRing ring;
    private final InputLog inputs;
    private final FindingSink sink;
    private final SlidingExtreme greatests;
    private final RecentBounds bounds;
    private final ReadingRing readings = new ReadingRing();
    private final Deque<PendingDrop> pending = new ArrayDeque<>();
    private final long second;
    private final long keptTicks;
    private long fallBefore = Long.MIN_VALUE;
    private long outingFirst = Long.MAX_VALUE;

    /** @param ring holds the samples before each run, and the run itself when it comes here */
    DropDetector(Instrument instrument, Thresholds thresholds, CountRing ring, InputLog inputs, FindingSink sink) {
        this.thresholds = thresholds;
        relations = thresholds.relations;
        this.ring = ring;
        this.inputs = inputs;
        this.sink = sink;
        greatests = SlidingExtreme.greatest(ring, thresholds.dropWithin);
        bounds = new RecentBounds(thresholds.dropWithin);
        second = instrument.tickHz();
        keptTicks = second * (2 + thresholds.dropWithin / thresholds.oneSecond);
    }

    @Override
    public void run(Run run) {
        if (outingFirst == Long.MAX_VALUE) {
            outingFirst = run.first;
        }
        if (!pending.isEmpty()) {
            for (PendingDrop drop : pending) {
                drop.take(run, 0);
            }
        }
        if (mayDrop(run)) {
            seek(run);
        }
        bounds.add(run);
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        if (!areWaiting() && !bounds.isEmpty()) {
            long high = bounds.greatest() + thresholds.dropFrom / 8L;
            if (high < thresholds.dropFrom) {
                quiet.notAbove(thresholds.dropFrom - 1L);
            } else {
                quiet.notAbove(high);
                quiet.notBelow(relations.dropsTo((int) Math.min(high, Integer.MAX_VALUE)) + 1L);
            }
            for (PendingDrop drop : pending) {
                drop.narrow(quiet, run.first);
            }
        } else {
            quiet.never();
        }
    }

    /** True when it is known of a drop whether the line stays slack, but not what the shaft did. */
    boolean areWaiting() {
        return !pending.isEmpty() && pending.getFirst().isDecided();
    }

    /** A cheap bound: false when no sample of the run can be a drop. */
    private boolean mayDrop(Run run) {
        int high = Math.max(bounds.greatest(), run.greatest);
        return high >= thresholds.dropFrom && run.least <= relations.dropsTo(high);
    }

    private void seek(Run run) {
        for (int from = 0; from < run.n; from += PIECE) {
            int end = Math.min(run.n, from + PIECE);
            long most = mostThatDrops(run, from, end);
            for (int k = from; k < end; k++) {
                if (run.count(k) <= most) {
                    judge(run, k);
                }
            }
        }
    }

    /** No count above this one is a drop at a sample from {@code from} to before {@code end} of the run. */
    private long mostThatDrops(Run run, int from, int end) {
        long place = ring.placeOf(run.first);
        long earliest = Math.max(ring.stretchFirst(), Math.max(outingFirst, fallBefore + 1));
        long first = Math.max(place + from - thresholds.dropWithin, ring.placeOf(earliest));
        long last = place + end - 2;
        int high = first > last ? Integer.MIN_VALUE : ring.greatest(first, last);
        return high < thresholds.dropFrom ? Long.MIN_VALUE : relations.dropsTo(high);
    }

    private void judge(Run run, int k) {
        long fall = run.first + k;
        long low = Math.max(fall - thresholds.dropWithin, Math.max(outingFirst, fallBefore + 1));
        if (low < ring.stretchFirst() || low >= fall) {
            return;
        }
        long place = greatests.place(ring.placeOf(low), ring.placeOf(fall) - 1);
        int before = ring.at(place);
        int count = run.count(k);
        if (before < thresholds.dropFrom || count > relations.dropsTo(before) || !relations.isDrop(before, count)) {
            return;
        }
        fallBefore = fall;
        long start = ring.numberOf(place);
        PendingDrop drop =
                new PendingDrop(thresholds, start, before, fall, count, inputs.clutchAt(start), inputs.brakeAt(start));
        drop.take(run, k + 1);
        pending.add(drop);
    }

    /** A shaft reading, in order of ticks; may come before or after the samples of its time. */
    void reading(long tick, double rpm) {
        readings.add(tick, rpm);
    }

    /** All of these, as {@link #reading} each. */
    void readings(ShaftReadings all) {
        readings.addSpeeds(all, 0);
    }

    /** A frame has been taken: notes the ticks of the drops that were found in it. */
    void frameTaken(long frameFirst, long frameTick, Frames frames) {
        long oldest = frameTick;
        for (PendingDrop drop : pending) {
            if (drop.start() >= frameFirst - thresholds.dropWithin) {
                drop.setStartTick(frames.tickOf(drop.start()));
            }
            oldest = Math.min(oldest, drop.startTick());
        }
        readings.forgetBefore(oldest - keptTicks);
    }

    /**
     * Tells the drops that can change no more.
     *
     * @param shaftTick readings up to this tick are known
     */
    void report(long shaftTick) {
        while (!pending.isEmpty() && isKnown(pending.getFirst(), shaftTick)) {
            PendingDrop drop = pending.removeFirst();
            drop.judgeShaft(readings, second);
            sink.finding(drop.finding());
        }
    }

    private boolean isKnown(PendingDrop drop, long shaftTick) {
        return drop.isDecided() && shaftTick >= drop.startTick() + second;
    }

    @Override
    public void gap(Gap gap) {
        bounds.clear();
        pending.forEach(drop -> drop.gap(gap));
    }

    @Override
    public void end() {
        pending.forEach(PendingDrop::end);
    }
}
