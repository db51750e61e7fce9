package tautlog.logger.live;

import java.util.Optional;
import tautlog.detect.SlackProof;
import tautlog.detect.SlackProof.Found;
import tautlog.detect.SlackProof.Hold;
import tautlog.logger.config.ZeroChoice;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.ZeroSource;

/**
 * Says when the zero moves, and where to: only to where {@link SlackProof} saw it, and only if it may. Source: {@code
 * FINDINGS.md}, Zero. Is fed what the detectors are fed. Touches nothing: who asks {@link #move} tells it to everybody.
 */
final class ZeroFollower extends QuietEvidence {
    private final SlackProof proof;
    private final ZeroChoice choice;
    private int shift;

    ZeroFollower(Instrument instrument, Rig rig, Calibration calibration, ZeroChoice choice) {
        proof = new SlackProof(instrument, rig, calibration);
        this.choice = choice;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        proof.tension(number, tick, flags, counts, from, n);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        proof.input(atNumber, tick, selector, present, state);
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        shift = shiftCounts;
        proof.zero(atNumber, shiftCounts, by);
    }

    /** The shift that is to hold from the sample after the frame taken last; empty when all stays as it is. */
    Optional<Found> move() {
        return choice == ZeroChoice.FIXED ? Optional.empty() : proof.found().filter(this::isNews);
    }

    /** A person's word is always worth a row; slack that proves the zero in force is not. */
    private boolean isNews(Found found) {
        return found.by() == ZeroSource.BUTTON || found.shiftCounts() != shift;
    }

    /** Whether somebody held the mark button for 3 s up to the frame taken last, and the zero was not set by it. */
    boolean hasRefused() {
        return choice == ZeroChoice.FOLLOW && proof.hold() == Hold.NOT_SLACK;
    }

    int shiftCounts() {
        return shift;
    }

    boolean isProven() {
        return proof.isProven();
    }
}
