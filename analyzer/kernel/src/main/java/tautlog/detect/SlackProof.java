package tautlog.detect;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.ZeroSource;

/**
 * Watches one outing for proven slack, by which alone a zero may move. Source: {@code FINDINGS.md}, Zero.
 *
 * <pre>
 *   Evidence ──▶ ZeroShift ──▶ SlackProof ──▶ {@link #found}: where the zero was seen, or nothing
 * </pre>
 *
 * <p>Takes the counts that {@link tautlog.sample.ZeroShift} gives, like the detectors, and the shifts themselves; what is compared
 * with the calibration's own zero has the shift put back. Allocates nothing per sample.
 */
public final class SlackProof extends QuietEvidence {
    private static final int BUTTON = 1;
    private static final BigDecimal HELD_SECONDS = BigDecimal.valueOf(3);

    /** What became of the mark button that was held for 3 s. */
    public enum Hold {
        /** Nobody held it, or not so long yet. */
        NONE,
        /** The line was slack. */
        SLACK,
        /** The line was under load, not at rest, or further from the calibration's zero than may be taken away. */
        NOT_SLACK
    }

    /**
     * The zero as it was seen.
     *
     * @param shiftCounts from the calibration's own zero, halves rounded away from it
     */
    public record Found(int shiftCounts, ZeroSource by) {}

    private final Thresholds thresholds;
    private final Calibration calibration;
    private final BigDecimal mostResponse;
    private final BigDecimal leastResponse;
    private final int mostShift;
    private final int leastShift;
    private final PullState pulls;
    private final SteadyStretch tenSeconds;
    private final SteadyStretch held;

    private boolean began;
    private long first;
    private long next;
    private int shift;
    private long nextShiftAt = Long.MAX_VALUE;
    private int nextShift;

    private boolean wasUp;
    private boolean isHeld;
    private long heldFrom = Long.MAX_VALUE;

    private boolean proven;
    private Optional<Found> found = Optional.empty();
    private Hold hold = Hold.NONE;

    /** @param calibration of the line's tension */
    public SlackProof(Instrument instrument, Rig rig, Calibration calibration) {
        this.calibration = calibration;
        thresholds = new Thresholds(instrument, rig, calibration);
        BigDecimal drift = rig.detect().driftNewtons();
        mostResponse = response(drift);
        leastResponse = response(drift.negate());
        Calibration fromZero = new Calibration(BigDecimal.ZERO, calibration.newtonsPerCount(), calibration.curvature());
        mostShift = fromZero.greatestCountsAtOrBelow(drift);
        leastShift = fromZero.leastCountsAtOrAbove(drift.negate());
        pulls = new PullState(thresholds);
        tenSeconds = new SteadyStretch(thresholds.zeroStretch);
        held = new SteadyStretch(instrument.rate().samplesIn(HELD_SECONDS));
    }

    /** (count − zero) · newtons per count, of a tension. */
    private BigDecimal response(BigDecimal newtons) {
        return newtons.add(calibration.curvature().multiply(newtons).multiply(newtons));
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        nextShiftAt = atNumber;
        nextShift = shiftCounts;
        proven |= by == ZeroSource.BUTTON;
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        boolean isKnown = (present & BUTTON) != 0;
        boolean isDown = isKnown && (state & BUTTON) != 0;
        if (!isDown) {
            wasUp |= isKnown;
            isHeld = false;
            heldFrom = Long.MAX_VALUE;
            held.abandon();
        } else if (wasUp && !isHeld) {
            isHeld = true;
            heldFrom = atNumber;
        }
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        found = Optional.empty();
        hold = Hold.NONE;
        if ((flags & FLAG_OPEN_BRIDGE) != 0) {
            return;
        }
        if (!began) {
            began = true;
            first = number;
            tenSeconds.begin(number);
        } else if (number > next) {
            pulls.gap(number - next);
        }
        for (int i = 0; i < n; i++) {
            sample(number + i, counts[from + i]);
        }
        next = number + n;
        if (pulls.isLoaded()) {
            found = Optional.empty(); // the next pull begins: its counts are not moved
        }
    }

    private void sample(long number, int count) {
        if (number >= nextShiftAt) {
            shift = nextShift;
            nextShiftAt = Long.MAX_VALUE;
        }
        pulls.sample(count);
        int own = count + shift;
        if (number >= tenSeconds.end()) {
            tenSeconds.beginOf(number, first);
        }
        if (tenSeconds.add(number, own) && pulls.hasClosed() && isSlack(tenSeconds)) {
            proven = true;
            found = Optional.of(new Found(shiftOf(tenSeconds), ZeroSource.SLACK));
        }
        button(number, own);
    }

    private void button(long number, int own) {
        if (number >= heldFrom) {
            heldFrom = Long.MAX_VALUE;
            held.begin(number);
        }
        if (held.add(number, own)) {
            boolean isSlack = isSlack(held);
            hold = isSlack ? Hold.SLACK : Hold.NOT_SLACK;
            if (isSlack) {
                found = Optional.of(new Found(shiftOf(held), ZeroSource.BUTTON));
            }
        }
    }

    private boolean isSlack(SteadyStretch stretch) {
        return !pulls.isLoaded() && stretch.isSlack(thresholds) && isNearOwnZero(stretch);
    }

    /** Exact: the mean's distance from the calibration's own zero is not beyond the drift setting. */
    private boolean isNearOwnZero(SteadyStretch stretch) {
        BigDecimal n = BigDecimal.valueOf(stretch.length());
        BigDecimal total = fromOwnZero(stretch).multiply(calibration.newtonsPerCount());
        return total.compareTo(mostResponse.multiply(n)) <= 0 && total.compareTo(leastResponse.multiply(n)) >= 0;
    }

    /** Sum of the distances from the calibration's own zero, in counts. */
    private BigDecimal fromOwnZero(SteadyStretch stretch) {
        return BigDecimal.valueOf(stretch.sum())
                .subtract(calibration.zeroCounts().multiply(BigDecimal.valueOf(stretch.length())));
    }

    private int shiftOf(SteadyStretch stretch) {
        int mean = fromOwnZero(stretch)
                .divide(BigDecimal.valueOf(stretch.length()), 0, RoundingMode.HALF_UP)
                .intValueExact();
        return Math.max(leastShift, Math.min(mostShift, mean)); // rounding must not lead beyond the bound
    }

    /** The zero that the frame taken last proved, if it did and no pull is open or opening at its end. */
    public Optional<Found> found() {
        return found;
    }

    /** What the frame taken last said of the mark button. */
    public Hold hold() {
        return hold;
    }

    /** True once slack was proven in this outing, or a person's word for it was taken. */
    public boolean isProven() {
        return proven;
    }
}
