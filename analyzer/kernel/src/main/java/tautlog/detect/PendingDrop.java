package tautlog.detect;

import tautlog.detect.Finding.Drop;
import tautlog.detect.Finding.ShaftAfterDrop;

/** A drop that has been found, until it is known what tension and shaft did after it. */
final class PendingDrop {
    private static final int LEAST_READINGS = 5;
    private static final double RAN_UP = 1.1;

    private final Thresholds thresholds;
    private final long start;
    private final long fall;
    private final int before;
    private final Known clutch;
    private final Known brake;
    private int after;
    private Known staysSlack = Known.UNKNOWN;
    private boolean slackDecided;
    private boolean cut;
    private boolean numberMissing;
    private long startTick;
    private ShaftAfterDrop shaft = ShaftAfterDrop.UNKNOWN;

    PendingDrop(Thresholds thresholds, long start, int before, long fall, int after, Known clutch, Known brake) {
        this.thresholds = thresholds;
        this.start = start;
        this.fall = fall;
        this.before = before;
        this.after = after;
        this.clutch = clutch;
        this.brake = brake;
    }

    long start() {
        return start;
    }

    void setStartTick(long tick) {
        startTick = tick;
    }

    long startTick() {
        return startTick;
    }

    /** Takes the run's samples from {@code k} on. */
    void take(Run run, int k) {
        if (slackDecided || isUnmovedBy(run)) {
            return;
        }
        for (int i = k; i < run.n; i++) {
            long number = run.first + i;
            if (!cut && number <= fall + thresholds.dropAfter) {
                after = Math.min(after, run.count(i));
            }
            if (number >= fall + thresholds.dropAfter && number <= slackThrough()) {
                takeSlack(run.count(i));
            }
        }
        if (run.last() >= slackThrough() && !slackDecided) {
            decide(numberMissing || cut ? Known.UNKNOWN : Known.YES);
        }
    }

    /** The line is slack, as it was: most of the two seconds after a drop. */
    boolean isUnmovedBy(Run run) {
        return run.greatest < thresholds.slackBelow
                && run.first > fall + thresholds.dropAfter
                && run.last() < slackThrough();
    }

    /** Narrows {@code quiet} to the runs that leave it unmoved; {@code next} is the number of the first sample of such a run. */
    void narrow(Quiet quiet, long next) {
        if (slackDecided || next <= fall + thresholds.dropAfter) {
            quiet.never();
        }
        quiet.notAbove(thresholds.slackBelow - 1L);
        quiet.notAfter(slackThrough() - 1);
    }

    private void takeSlack(int count) {
        if (!slackDecided && !cut && count >= thresholds.slackBelow) {
            decide(Known.NO);
        }
    }

    void gap(Gap gap) {
        cut |= gap.isLong();
        numberMissing |= gap.touches(fall + thresholds.dropAfter - 1, slackThrough());
    }

    /** The outing is over: what is not known stays unknown. */
    void end() {
        slackDecided = true;
    }

    private long slackThrough() {
        return fall + thresholds.dropSlack;
    }

    private void decide(Known known) {
        staysSlack = known;
        slackDecided = true;
    }

    boolean isDecided() {
        return slackDecided;
    }

    /** What the shaft did, from the readings around the start; {@code second} is 1 s in ticks. */
    void judgeShaft(ReadingRing readings, long second) {
        double[] earlier = readings.sorted(startTick - second, startTick);
        double[] later = readings.sorted(startTick, startTick + second);
        if (earlier.length >= LEAST_READINGS && later.length >= LEAST_READINGS) {
            shaft = judge(ReadingRing.median(earlier), later[0], later[later.length - 1]);
        }
    }

    private static ShaftAfterDrop judge(double before, double least, double greatest) {
        if (before < ShaftSpeed.TURNING_RPM) {
            return ShaftAfterDrop.STILL;
        }
        if (least < ShaftSpeed.TURNING_RPM) {
            return ShaftAfterDrop.STOPPED;
        }
        return greatest > RAN_UP * before ? ShaftAfterDrop.RAN_UP : ShaftAfterDrop.KEPT_TURNING;
    }

    Drop finding() {
        return new Drop(start, fall, before, after, staysSlack, shaft, clutch, brake);
    }
}
