package tautlog.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;
import tautlog.detect.Known;

/** The paragraph Pull. */
final class Pulls {
    private static final List<BigDecimal> BANDS =
            List.of(new BigDecimal("0.25"), new BigDecimal("0.5"), new BigDecimal("0.75"), BigDecimal.ONE);

    private final Line line;
    private final ShaftSpeed shaft;
    private final List<Finding.Overload> overloads;
    private final List<Finding.Shock> shocks;
    private final BigDecimal from;

    Pulls(Line line, ShaftSpeed shaft, List<Finding.Overload> overloads, List<Finding.Shock> shocks) {
        this.line = line;
        this.shaft = shaft;
        this.overloads = overloads;
        this.shocks = shocks;
        from = line.settings.pullFromNewtons();
    }

    List<Finding.Pull> all() {
        List<Finding.Pull> pulls = new ArrayList<>();
        int place = 0;
        while (place < line.size) {
            if (opensAt(place)) {
                int last = line.lastBeforeLongGap(place);
                int closer = closer(place, last);
                pulls.add(pull(place, Math.min(closer, last), closer > last));
                place = Math.min(closer, last);
            }
            place++;
        }
        return pulls;
    }

    /** "Opens at the first of a run with T ≥ pull_from for pull_for"; "Any gap resets opening runs". */
    private boolean opensAt(int start) {
        long needed = line.samplesIn(line.settings.pullForSeconds());
        if (start + needed > line.size || !line.isStretch(start, (int) (start + needed - 1))) {
            return false;
        }
        for (int i = start; i < start + needed; i++) {
            if (line.isBelow(i, from)) {
                return false;
            }
        }
        return true;
    }

    /**
     * "Closes when T < pull_from/2 for pull_end_after"; at a short gap "its closing timer pauses".
     *
     * @return the place of the sample that closes it, after {@code last} when none does
     */
    private int closer(int start, int last) {
        BigDecimal half = from.divide(BigDecimal.valueOf(2));
        long needed = line.samplesIn(line.settings.pullEndAfterSeconds());
        long run = 0;
        for (int i = start; i <= last; i++) {
            run = line.isBelow(i, half) ? run + 1 : 0;
            if (run == needed) {
                return i;
            }
        }
        return last + 1;
    }

    /** "End: the last sample with T ≥ pull_from." */
    private Finding.Pull pull(int start, int until, boolean isCut) {
        int end = until;
        while (line.isBelow(end, from)) {
            end--;
        }
        boolean atEnd = until == line.size - 1;
        int share = greatestShare(start, end);
        long startNumber = line.number[start];
        long endNumber = line.number[end];
        long winching = shaft.samplesSpokenFor(startNumber, endNumber, true);
        long held = shaft.samplesSpokenFor(startNumber, endNumber, false);
        long sum = 0;
        for (int i = start; i <= end; i++) {
            sum += line.count[i];
        }
        return new Finding.Pull(
                startNumber,
                endNumber,
                line.count[line.greatest(start, end)],
                sum,
                end - start + 1,
                line.hookup[share].id(),
                line.assumed[share],
                line.count[share],
                (int) overloads.stream()
                        .filter(o -> isWithin(o.startNumber(), startNumber, endNumber))
                        .count(),
                (int) shocks.stream()
                        .filter(s -> isWithin(s.peakNumber(), startNumber, endNumber))
                        .count(),
                held(winching, held, endNumber - startNumber + 1),
                // "of a pull …, when a sample from its start to its end"
                line.isLowerBound(start, end),
                // "a short gap lies between its start and its end; or it closed by its own condition and a short gap
                // lies
                // between its end and the sample that closed it"
                line.shortGapBetween(start, end) || (!isCut && line.shortGapBetween(end, until)),
                isCut && !atEnd,
                isCut && atEnd,
                bands(start, end),
                winching,
                held,
                line.countSquares(start, end));
    }

    private static boolean isWithin(long number, long start, long end) {
        return start <= number && number <= end;
    }

    /** "held is yes when all of them are held, no when one is winching, else unknown." */
    private static Known held(long winching, long held, long all) {
        if (winching > 0) {
            return Known.NO;
        }
        return held == all ? Known.YES : Known.UNKNOWN;
    }

    /** "The share is the greatest T_k / L_k …; hookup and limit are those in force at the earliest sample with that share." */
    private int greatestShare(int start, int end) {
        int greatest = start;
        for (int i = start; i <= end; i++) {
            if (line.compareShares(i, greatest) > 0) {
                greatest = i;
            }
        }
        return greatest;
    }

    /** "Time by share counts the present samples from start to end with share ≤ 0.25, ≤ 0.5, ≤ 0.75, ≤ 1, above." */
    private List<Long> bands(int start, int end) {
        long[] bands = new long[BANDS.size() + 1];
        for (int i = start; i <= end; i++) {
            int band = 0;
            while (band < BANDS.size() && line.isAbove(i, BANDS.get(band).multiply(line.limit[i]))) {
                band++;
            }
            bands[band]++;
        }
        return java.util.Arrays.stream(bands).boxed().toList();
    }
}
