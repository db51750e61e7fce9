package tautlog.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cuts the counts of a block into pieces and finds for each how it is foretold best: a piece of 2,048 counts is halved, and its halves
 * again, where that takes fewer bits. What a symbol costs is a guess at first, then what the pieces found so far make of it. Not
 * thread-safe.
 */
final class PieceFinder {
    static final int SHORTEST = 32;
    static final int LONGEST = 2_048;

    private static final int PASSES = 2;
    /** What a bit costs. */
    private static final int BIT = 256;
    /** A piece's own head, about. */
    private static final int HEAD = 24 * BIT;
    /** A level that is followed begins where the line through so many counts does. */
    private static final int BEGINNING = 24;
    /** Where a line leaves errors that cost so much more than the cheapest one, or less, it fits: even noise does that (normal: 0.72 bits). */
    private static final int SPREAD = BIT * 3 / 4;
    /** Longer pieces are not followed: noise moves the forecast. */
    private static final int LONGEST_FOLLOWED = 512;
    /** Those of {@link Piece} that are tried; the others are for what may come. */
    private static final int[] FOLLOWING = {3, 4, 6, 7};

    private final int[] cost = new int[SymbolCode.SYMBOLS];
    private final int[] often = new int[SymbolCode.SYMBOLS];
    private final int[] errors = new int[LONGEST];
    private int cheapest;
    private int[] counts = new int[0];
    private int end;

    /** A piece and what it costs. */
    private record Found(Piece piece, int cost) {}

    /** The best pieces for the first {@code n} of {@code from}, in order. */
    List<Piece> find(int[] from, int n) {
        counts = from;
        end = n;
        for (int symbol = 0; symbol < cost.length; symbol++) {
            int distance = symbol - SymbolCode.MIDDLE;
            cost[symbol] = Math.min(SymbolCode.LONGEST * BIT, 4 * BIT + distance * distance * BIT / 50);
        }
        List<Piece> pieces = new ArrayList<>();
        for (int pass = 0; pass < PASSES; pass++) {
            cheapest = Arrays.stream(cost).min().orElseThrow();
            pieces = pass();
        }
        return pieces;
    }

    private List<Piece> pass() {
        List<Found> found = new ArrayList<>();
        for (int at = 0; at < end; at += LONGEST) {
            cut(at, LONGEST, found);
        }
        Arrays.fill(often, 0);
        List<Piece> pieces = new ArrayList<>();
        int at = 0;
        for (Found one : found) {
            Piece piece = shifted(one, at).piece;
            pieces.add(piece);
            count(piece, at);
            at += piece.n();
        }
        price();
        return pieces;
    }

    /** Appends the best pieces for {@code length} counts from {@code at} on, as far as there are so many; what they cost. */
    private int cut(int at, int length, List<Found> found) {
        if (at >= end) {
            return 0;
        }
        Found whole = best(at, Math.min(length, end - at));
        int mark = found.size();
        if (length > SHORTEST) {
            int halves = cut(at, length / 2, found) + cut(at + length / 2, length / 2, found);
            if (halves < whole.cost) {
                return halves;
            }
            found.subList(mark, found.size()).clear();
        }
        found.add(whole);
        return whole.cost;
    }

    private Found best(int at, int n) {
        Line level = Line.level(counts, at, n);
        Found best = better(new Found(level.piece(n, Piece.LINE), Integer.MAX_VALUE), level.piece(n, Piece.LINE), at);
        Line line = Line.through(counts, at, n);
        best = better(best, line.piece(n, Piece.LINE), at);
        if (n <= LONGEST_FOLLOWED && best.cost > HEAD + n * (cheapest + SPREAD)) {
            Line beginning = Line.through(counts, at, Math.min(n, BEGINNING));
            for (int gain : FOLLOWING) {
                best = better(best, beginning.piece(n, gain), at);
            }
        }
        return best;
    }

    /** Least squares over the counts; any line would do, what is left over is exact. */
    private record Line(double first, double slope) {
        static Line level(int[] counts, int at, int n) {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += counts[at + i];
            }
            return new Line(sum / n, 0);
        }

        static Line through(int[] counts, int at, int n) {
            double sum = 0;
            double moment = 0;
            double middle = (n - 1) / 2.0;
            for (int i = 0; i < n; i++) {
                sum += counts[at + i];
                moment += (i - middle) * counts[at + i];
            }
            double slope = n < 2 ? 0 : 12 * moment / ((double) n * ((double) n * n - 1));
            return new Line(sum / n - middle * slope, slope);
        }

        Piece piece(int n, int gain) {
            return new Piece(n, gain, 0, (int) Math.round(first), (int) Math.round(slope * 256));
        }
    }

    /** The chosen piece moved up or down by a count, where that is better: noise has edges. */
    private Found shifted(Found chosen, int at) {
        Found best = chosen;
        for (int by = -1; by <= 1; by += 2) {
            Piece piece = chosen.piece;
            best = better(best, new Piece(piece.n(), piece.gain(), 0, piece.base() + by, piece.slope()), at);
        }
        return best;
    }

    private Found better(Found best, Piece tried, int at) {
        tried.errors(counts, at, errors);
        int n = tried.n();
        int least = 0;
        int greatest = 0;
        for (int i = 0; i < n; i++) {
            least = Math.min(least, errors[i]);
            greatest = Math.max(greatest, errors[i]);
        }
        int shift = shift(least, greatest);
        if (shift == Piece.EXACT) {
            return HEAD < best.cost ? new Found(with(tried, shift), HEAD) : best;
        }
        Found found = best;
        for (int more = 0; more < 2 && shift + more <= Piece.GREATEST_SHIFT; more++) {
            int cost = cost(n, shift + more);
            if (cost < found.cost) {
                found = new Found(with(tried, shift + more), cost);
            }
        }
        return found;
    }

    private static Piece with(Piece piece, int shift) {
        return new Piece(piece.n(), piece.gain(), shift, piece.base(), piece.slope());
    }

    /** The fewest low bits without which the errors fit into symbols. */
    private static int shift(int least, int greatest) {
        if (least == 0 && greatest == 0) {
            return Piece.EXACT;
        }
        int bits = 33 - Integer.numberOfLeadingZeros(Math.max(~least, greatest)); // with its sign
        return Math.max(0, bits - 6);
    }

    private int cost(int n, int shift) {
        int sum = HEAD + n * shift * BIT;
        for (int i = 0; i < n; i++) {
            sum += cost[(errors[i] >> shift) + SymbolCode.MIDDLE];
        }
        return sum;
    }

    private void count(Piece piece, int at) {
        if (piece.shift() != Piece.EXACT) {
            piece.errors(counts, at, errors);
            for (int i = 0; i < piece.n(); i++) {
                often[(errors[i] >> piece.shift()) + SymbolCode.MIDDLE]++;
            }
        }
    }

    /** What each symbol costs when it comes as often as it did; one that did not is dear. */
    private void price() {
        double sum = Arrays.stream(often).sum() + 1.0;
        for (int symbol = 0; symbol < cost.length; symbol++) {
            double bits = Math.log(sum / Math.max(often[symbol], 0.01)) / Math.log(2);
            cost[symbol] = (int) (BIT * Math.min(SymbolCode.LONGEST, Math.max(bits, 0.5)));
        }
    }
}
