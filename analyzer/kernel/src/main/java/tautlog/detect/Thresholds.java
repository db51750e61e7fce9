package tautlog.detect;

import java.math.BigDecimal;
import tautlog.rig.DetectSettings;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.SampleRate;

/**
 * Every number that the detectors compare with, worked out once, exactly: forces as counts, times as sample numbers.
 *
 * <p>Source: {@code FINDINGS.md}, Counting. Names of forces say on which side the count stands: {@code …From} is the least
 * count with T ≥ the force, {@code …Below} the least count that is not below it.
 */
final class Thresholds {
    private static final BigDecimal HALF = new BigDecimal("0.5");

    final int pullFrom;
    final int pullHalf;
    final int slackBelow;
    final int shockFrom;
    final int dropFrom;
    /** Greatest count with T ≤ −pull_from. */
    final int pushed;
    /** From this count on a tension is only a lower bound: the converter's end stop, beyond the cell's capacity or a curve's top. */
    final int atLeastFrom;

    /** Everything that relates one tension to another. */
    final Relations relations;

    final double stallTo;

    final int pullFor;
    final int pullEndAfter;
    final int bridge;
    final int overloadQuiet;
    final int slackFor;
    final int shockWindow;
    final int settleAfter;
    final int settleEnd;
    final int joltWithin;
    final int joltWindow;
    final int dropWithin;
    final int dropAfter;
    final int dropSlack;
    final int oneSecond;
    final int zeroStretch;
    final int unprovenAfter;

    Thresholds(Instrument instrument, Rig rig, Calibration calibration) {
        DetectSettings set = rig.detect();
        BigDecimal rated = rig.ratedPullNewtons();
        pullFrom = calibration.leastCountsAtOrAbove(set.pullFromNewtons());
        pullHalf = calibration.leastCountsAtOrAbove(set.pullFromNewtons().multiply(HALF));
        slackBelow = calibration.leastCountsAtOrAbove(set.slackBelowNewtons());
        shockFrom = calibration.leastCountsAtOrAbove(set.shockFrom().multiply(rated));
        dropFrom = calibration.leastCountsAtOrAbove(set.dropFrom().multiply(rated));
        pushed = calibration.greatestCountsAtOrBelow(set.pullFromNewtons().negate());
        atLeastFrom = LineCalibration.atLeastFrom(calibration, instrument, rig);
        stallTo = set.stallTo().doubleValue();

        SampleRate rate = instrument.rate();
        pullFor = rate.samplesIn(set.pullForSeconds());
        pullEndAfter = rate.samplesIn(set.pullEndAfterSeconds());
        bridge = rate.samplesIn(set.bridgeSeconds());
        overloadQuiet = rate.samplesIn(set.overloadQuietSeconds());
        slackFor = rate.samplesIn(set.slackForSeconds());
        shockWindow = rate.samplesIn(set.shockWindowSeconds());
        settleAfter = rate.samplesIn(HALF);
        settleEnd = rate.samplesIn(new BigDecimal("1.5"));
        joltWithin = rate.samplesIn(set.joltWithinSeconds());
        joltWindow = rate.samplesIn(HALF);
        dropWithin = rate.samplesIn(set.dropWithinSeconds());
        dropAfter = rate.samplesIn(new BigDecimal("0.15"));
        dropSlack = rate.samplesIn(BigDecimal.valueOf(2));
        oneSecond = rate.samplesIn(BigDecimal.ONE);
        zeroStretch = rate.samplesIn(BigDecimal.TEN);
        unprovenAfter = rate.samplesIn(BigDecimal.valueOf(600));
        relations = Relations.of(calibration, rig, zeroStretch);
    }

    /** Whether counts from {@code least} to {@code greatest} are a slack line that stands still. Source: {@code FINDINGS.md}, zero-drift. */
    boolean areStillSlack(int least, int greatest) {
        return least > pushed && greatest < pullFrom && relations.isSteady(least, greatest);
    }
}
