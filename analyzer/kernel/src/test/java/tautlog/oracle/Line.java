package tautlog.oracle;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.rig.DetectSettings;
import tautlog.rig.Hookup;

/**
 * The paragraphs Counting and Gap: the present samples of an outing as arrays, one place for each, and what lies between them.
 *
 * <p>A <em>place</em> is an index into the arrays; a <em>number</em> is a sample number of the instrument.
 */
final class Line {
    final OutingData data;
    final DetectSettings settings;
    final BigDecimal ratedPull;
    final int size;
    final long[] number;
    final int[] count;
    /** "T_k is the tension of sample number k in newtons (calibrated, unfiltered)", exact. */
    final BigDecimal[] tension;

    final long[] tick;
    final Hookup[] hookup;
    final BigDecimal[] limit;
    final boolean[] assumed;
    private final long bridge;
    private final Map<Long, Integer> placeOf = new HashMap<>();

    Line(OutingData data) {
        this.data = data;
        settings = data.rig().detect();
        ratedPull = data.rig().ratedPullNewtons();
        bridge = samplesIn(settings.bridgeSeconds());
        List<long[]> present = present();
        size = present.size();
        number = new long[size];
        count = new int[size];
        tension = new BigDecimal[size];
        tick = new long[size];
        hookup = new Hookup[size];
        limit = new BigDecimal[size];
        assumed = new boolean[size];
        Map<Integer, BigDecimal> tensions = new HashMap<>();
        for (int i = 0; i < size; i++) {
            number[i] = present.get(i)[0];
            count[i] = (int) present.get(i)[1];
            tick[i] = present.get(i)[2];
            tension[i] = tensions.computeIfAbsent(count[i], this::newtons);
            placeOf.put(number[i], i);
        }
        hookupsInForce();
    }

    BigDecimal newtons(int counts) {
        return newtons(BigDecimal.valueOf(counts));
    }

    /** "With T = (c − zero) · k, zero and k decimals"; under a curve the double that the page's formula gives. */
    BigDecimal newtons(BigDecimal counts) {
        return isCurved() ? new BigDecimal(level(counts.doubleValue())) : straight(counts);
    }

    private BigDecimal straight(BigDecimal counts) {
        return counts.subtract(data.calibration().zeroCounts())
                .multiply(data.calibration().newtonsPerCount());
    }

    boolean isCurved() {
        return data.calibration().curvature().signum() != 0;
    }

    /** "u = (c − zero) · k, w = √(max(0, 1 + (4 · κ) · u)), T = (2 · u)/(1 + w)", all doubles. */
    private double level(double counts) {
        double u = (counts - data.calibration().zeroCounts().doubleValue())
                * data.calibration().newtonsPerCount().doubleValue();
        return (2 * u) / (1 + w(u));
    }

    private double w(double u) {
        double inside = 1 + (4 * data.calibration().curvature().doubleValue()) * u;
        return inside > 0 ? Math.sqrt(inside) : 0;
    }

    /** "the mean of n counts is T(m) − (((κ · k) · k) · v)/((w · w) · w), 0 after the minus when w is 0". */
    double mean(int from, int to) {
        BigInteger sum = BigInteger.ZERO;
        BigInteger squares = BigInteger.ZERO;
        BigInteger n = BigInteger.valueOf(to - from + 1);
        for (int i = from; i <= to; i++) {
            BigInteger c = BigInteger.valueOf(count[i]);
            sum = sum.add(c);
            squares = squares.add(c.multiply(c));
        }
        double size = to - from + 1;
        double m = sum.doubleValue() / size;
        double v = n.multiply(squares).subtract(sum.pow(2)).doubleValue() / (size * size);
        double k = data.calibration().newtonsPerCount().doubleValue();
        double w = w((m - data.calibration().zeroCounts().doubleValue()) * k);
        double bend = ((data.calibration().curvature().doubleValue() * k) * k) * v;
        return level(m) - (w == 0 ? 0 : bend / ((w * w) * w));
    }

    /** "the sum of the squares of the counts, under a curve only". */
    BigInteger countSquares(int from, int to) {
        BigInteger squares = BigInteger.ZERO;
        for (int i = from; i <= to && isCurved(); i++) {
            squares = squares.add(BigInteger.valueOf(count[i]).pow(2));
        }
        return squares;
    }

    /** T of a count against a constant, exact: "c against zero + (θ + κ · θ²)/k, beyond the top zero + (θ/2)/k". */
    int compare(int counts, BigDecimal newtons) {
        BigDecimal bend = data.calibration().curvature().multiply(newtons);
        boolean beyondTop = bend.compareTo(new BigDecimal("-0.5")) <= 0;
        BigDecimal response = beyondTop ? newtons.divide(BigDecimal.valueOf(2)) : newtons.add(bend.multiply(newtons));
        return straight(BigDecimal.valueOf(counts)).compareTo(response);
    }

    /** T_a − T_b against a constant: exact, or "one subtraction of doubles, compared with the double nearest to the setting". */
    int compareDifference(int a, int b, BigDecimal newtons) {
        return isCurved()
                ? Double.compare(level(a) - level(b), newtons.doubleValue())
                : newtons(a).subtract(newtons(b)).compareTo(newtons);
    }

    /** T_a against factor · T_b, where b may be half a count: exact, or "one product of doubles". */
    int compareMultiple(int a, BigDecimal factor, BigDecimal b) {
        return isCurved()
                ? Double.compare(level(a), factor.doubleValue() * level(b.doubleValue()))
                : newtons(a).compareTo(factor.multiply(newtons(b)));
    }

    /** |T_a − T_b| as the rainflow count compares ranges. */
    double range(int a, int b) {
        return isCurved() ? Math.abs(level(a) - level(b)) : Math.abs((double) a - b);
    }

    /** "A sample number is present when a sample with it arrived in a frame not flagged open bridge." */
    private List<long[]> present() {
        List<long[]> present = new ArrayList<>();
        for (int f = 0; f < data.frames().size(); f++) {
            OutingData.Frame frame = data.frames().get(f);
            for (int k = 0; k < frame.counts().size() && !frame.isOpenBridge(); k++) {
                present.add(new long[] {frame.number() + k, frame.counts().get(k), tickOf(f, k)});
            }
        }
        return present;
    }

    /**
     * wire.md: "Sample k of a frame was taken at tick + round(k · P), P the ticks per sample between this frame and the contiguous
     * one before, else nominal", halves up.
     */
    private long tickOf(int f, int k) {
        OutingData.Frame frame = data.frames().get(f);
        long ticks = data.instrument().tickHz() * 1_000;
        long samples = data.instrument().rateMillihertz();
        if (f > 0) {
            OutingData.Frame before = data.frames().get(f - 1);
            if (before.lastNumber() + 1 == frame.number() && frame.tick() > before.tick()) {
                ticks = frame.tick() - before.tick();
                samples = frame.number() - before.number();
            }
        }
        if (k == 0) {
            return frame.tick();
        }
        long twice = Math.multiplyExact(2L * k, ticks);
        return frame.tick() + Math.addExact(twice, samples) / (2 * samples);
    }

    /** "Before anybody names one: the rig's assumed hookup, assumed. The latest naming at or before a number holds there …". */
    private void hookupsInForce() {
        for (int i = 0; i < size; i++) {
            hookup[i] = data.rig().assumed();
            assumed[i] = true;
            for (int c = data.hookups().size() - 1; c >= 0; c--) {
                OutingData.HookupChange change = data.hookups().get(c);
                if (change.atNumber() <= number[i]) {
                    Optional<Hookup> known = data.rig().hookup(change.id());
                    hookup[i] = known.orElseGet(this::lowest);
                    assumed[i] = known.isEmpty() || change.by().isAssumed();
                    break;
                }
            }
            limit[i] = hookup[i].limit().newtons();
        }
    }

    /** "an id that the rig does not know counts as the hookup with the lowest limit, assumed". */
    private Hookup lowest() {
        return data.rig().hookups().stream()
                .min(Comparator.comparing(h -> h.limit().newtons()))
                .orElseThrow();
    }

    /** "N(x) = max(1, round(x · f)), halves up." */
    long samplesIn(BigDecimal seconds) {
        BigDecimal hertz = BigDecimal.valueOf(data.instrument().rateMillihertz(), 3);
        return Math.max(
                1, seconds.multiply(hertz).setScale(0, RoundingMode.HALF_UP).longValueExact());
    }

    long samplesIn(String seconds) {
        return samplesIn(new BigDecimal(seconds));
    }

    boolean isEmpty() {
        return size == 0;
    }

    long first() {
        return number[0];
    }

    long last() {
        return number[size - 1];
    }

    boolean isPresent(long sampleNumber) {
        return placeOf.containsKey(sampleNumber);
    }

    int placeOf(long sampleNumber) {
        return placeOf.get(sampleNumber);
    }

    /** The first place with a number ≥ {@code sampleNumber}, {@code size} when there is none. */
    int firstPlaceFrom(long sampleNumber) {
        int found = java.util.Arrays.binarySearch(number, sampleNumber);
        return found >= 0 ? found : -found - 1;
    }

    /** "A gap's length is the number of missing numbers between two neighbouring present samples"; here before {@code place}. */
    long gapBefore(int place) {
        return place == 0 || place == size ? 0 : number[place] - number[place - 1] - 1;
    }

    /** "A gap of at most N(bridge) (0.25 s) missing numbers is short, else long." */
    boolean isLong(long gap) {
        return gap > bridge;
    }

    boolean isShort(long gap) {
        return gap > 0 && !isLong(gap);
    }

    /** The last place before the next long gap after {@code place}, or before the outing's end. */
    int lastBeforeLongGap(int place) {
        int last = place;
        while (last + 1 < size && !isLong(gapBefore(last + 1))) {
            last++;
        }
        return last;
    }

    /** True when a short gap lies between two places. */
    boolean shortGapBetween(int from, int to) {
        for (int i = from + 1; i <= to; i++) {
            if (isShort(gapBefore(i))) {
                return true;
            }
        }
        return false;
    }

    /** True when the places {@code from} to {@code to} are one stretch: a run of consecutive present numbers. */
    boolean isStretch(int from, int to) {
        return number[to] - number[from] == to - from;
    }

    boolean isBelow(int place, BigDecimal newtons) {
        return compare(count[place], newtons) < 0;
    }

    boolean isAbove(int place, BigDecimal newtons) {
        return compare(count[place], newtons) > 0;
    }

    /** "A sample at the converter's end stop (count ≥ full scale or ≤ −full scale − 1)". */
    boolean isAtEndStop(int place) {
        return isAtUpperEndStop(place) || count[place] <= -data.instrument().fullScale() - 1;
    }

    boolean isAtUpperEndStop(int place) {
        return count[place] >= data.instrument().fullScale();
    }

    /** "a sample … is at or above full scale, or beyond the cell's capacity", of the places {@code from} to {@code to}. */
    boolean isLowerBound(int from, int to) {
        for (int i = from; i <= to; i++) {
            if (isAtUpperEndStop(i) || isBeyondCell(i) || isAtTop(i)) {
                return true;
            }
        }
        return false;
    }

    /** "or at or beyond a curve's top": where 1 + 4 · κ · u is 0 or less, above zero. */
    private boolean isAtTop(int place) {
        BigDecimal four = BigDecimal.valueOf(4).multiply(data.calibration().curvature());
        BigDecimal u = straight(BigDecimal.valueOf(count[place]));
        return u.signum() > 0 && BigDecimal.ONE.add(four.multiply(u)).signum() <= 0;
    }

    private boolean isBeyondCell(int place) {
        return data.rig()
                .cellCapacityNewtons()
                .map(capacity -> isAbove(place, capacity))
                .orElse(false);
    }

    /** Compares T/L at two places: exactly, or "the quotients of doubles". */
    int compareShares(int a, int b) {
        if (isCurved() && !hookup[a].id().equals(hookup[b].id())) {
            return Double.compare(level(count[a]) / limit[a].doubleValue(), level(count[b]) / limit[b].doubleValue());
        }
        return tension[a].multiply(limit[b]).compareTo(tension[b].multiply(limit[a]));
    }

    /** The place of the greatest tension of {@code from} to {@code to}, the earliest of equals. */
    int greatest(int from, int to) {
        int greatest = from;
        for (int i = from; i <= to; i++) {
            if (count[i] > count[greatest]) {
                greatest = i;
            }
        }
        return greatest;
    }

    int leastCount(int from, int to) {
        return java.util.Arrays.stream(count, from, to + 1).min().orElseThrow();
    }
}
