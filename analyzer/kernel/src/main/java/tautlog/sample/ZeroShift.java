package tautlog.sample;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * Takes a moved zero off the counts, so that who stands behind it turns them into newtons with the calibration alone.
 *
 * <pre>
 *   Evidence (counts as they came) ──▶ ZeroShift ──▶ Evidence (counts less the shift in force) ──▶ detectors, screens
 * </pre>
 *
 * <p>A shift is a whole number of counts, so every comparison of the detectors stays one of whole numbers. A sample at the
 * converter's end stop stays as it is: it is a lower bound and says so. A sample that is not stays off the end stop.
 * Allocates nothing per sample.
 */
public final class ZeroShift extends ForwardedEvidence {
    private final Instrument instrument;
    private final BigDecimal zeroMoved;
    private int[] shifted = new int[0];
    private int shift;
    private long nextNumber = Long.MAX_VALUE;
    private int nextShift;

    /** For the calibration that the shifts were found with. */
    public ZeroShift(Instrument instrument, Evidence next) {
        this(instrument, BigDecimal.ZERO, next);
    }

    private ZeroShift(Instrument instrument, BigDecimal zeroMoved, Evidence next) {
        super(next);
        this.instrument = instrument;
        this.zeroMoved = zeroMoved;
    }

    /**
     * For another calibration than the one of the day: a zero that was found then was found at a count, and stays there.
     * Until one was found, the other calibration's own zero holds. Who stands behind is told the shift from that one.
     */
    public static ZeroShift under(Calibration now, Calibration ofTheDay, Instrument instrument, Evidence next) {
        return new ZeroShift(instrument, ofTheDay.zeroCounts().subtract(now.zeroCounts()), next);
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        nextNumber = atNumber;
        nextShift = zeroMoved
                .add(BigDecimal.valueOf(shiftCounts))
                .setScale(0, RoundingMode.HALF_UP)
                .intValueExact();
        super.zero(atNumber, nextShift, by);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        advanceTo(number);
        if (shiftsBefore(number + n)) {
            super.tension(number, tick, flags, shifted(number, counts, from, n), 0, n);
        } else {
            super.tension(number, tick, flags, counts, from, n);
        }
    }

    /** Goes on to sample {@code number}: a zero that moved at it or before is in force from now on. */
    public void advanceTo(long number) {
        if (number >= nextNumber) {
            shift = nextShift;
            nextNumber = Long.MAX_VALUE;
        }
    }

    /** Whether the zero moves behind the sample gone to and before sample {@code number}. */
    public boolean movesBefore(long number) {
        return nextNumber < number;
    }

    private boolean shiftsBefore(long number) {
        return shift != 0 || movesBefore(number);
    }

    /** What is left of {@code counts}, the next samples, in which the zero does not move. */
    public StoredCounts shifted(StoredCounts counts) {
        if (shift == 0) {
            return counts;
        }
        if (isFree(counts.least(), counts.greatest())) {
            return new ShiftedCounts(instrument, counts, shift);
        }
        int[] open = new int[counts.size()];
        counts.copyTo(open, 0);
        for (int i = 0; i < open.length; i++) {
            open[i] = shifted(instrument, open[i], shift);
        }
        return PlainCounts.copyOf(open, 0, open.length);
    }

    /**
     * What is left of a passage that comes next, in which the zero does not move; valid as long as that and the shift in force. Empty when
     * a count is at an end stop.
     */
    public Optional<Passage> shifted(Passage passage) {
        if (shift == 0) {
            return Optional.of(passage);
        }
        if (!isFree(passage.least(), passage.greatest())) {
            return Optional.empty();
        }
        return Optional.of(new ShiftedPassage(
                this,
                passage,
                shifted(instrument, passage.least(), shift),
                shifted(instrument, passage.greatest(), shift)));
    }

    private boolean isFree(int least, int greatest) {
        return !instrument.isAtEndStop(least) && !instrument.isAtEndStop(greatest);
    }

    /** What is left of {@code counts[from]} to {@code counts[from + n - 1]}, the next samples, from 0 on; valid until the next call. */
    public int[] shifted(long number, int[] counts, int from, int n) {
        if (shifted.length < n) {
            shifted = new int[n];
        }
        for (int i = 0; i < n; i++) {
            advanceTo(number + i);
            shifted[i] = shifted(instrument, counts[from + i], shift);
        }
        return shifted;
    }

    /** The count that is left of {@code count} under a zero moved by {@code shift} counts. */
    public static int shifted(Instrument instrument, int count, int shift) {
        if (instrument.isAtEndStop(count)) {
            return count;
        }
        int fullScale = instrument.fullScale();
        return Math.max(-fullScale, Math.min(fullScale - 1, count - shift));
    }
}
