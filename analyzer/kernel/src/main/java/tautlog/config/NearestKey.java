package tautlog.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the word that somebody may have meant. */
public final class NearestKey {
    private static final int LONGEST_CHANGE = 20;
    private static final int FAR = Integer.MAX_VALUE / 4;

    private NearestKey() {}

    /**
     * The known word with the fewest letters to change, insert, leave out or swap with a neighbour (the optimal string
     * alignment distance); of equals the first in the alphabet. Empty when more than half of the written word would change.
     */
    public static Optional<String> to(String written, Collection<String> known) {
        return known.stream()
                .filter(word -> distance(written, word) * 2 <= Math.max(2, written.length()))
                .min(Comparator.comparingInt((String word) -> distance(written, word))
                        .thenComparing(Comparator.naturalOrder()));
    }

    private static int distance(String a, String b) {
        if (Math.abs(a.length() - b.length()) > LONGEST_CHANGE) {
            return FAR; // keeps the table small for absurd words
        }
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                d[i][j] = i == 0 ? j : j == 0 ? i : cheapest(d, a, b, i, j);
            }
        }
        return d[a.length()][b.length()];
    }

    private static int cheapest(int[][] d, String a, String b, int i, int j) {
        int change = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        int best = Math.min(change, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        boolean swapped = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
        return swapped ? Math.min(best, 1 + d[i - 2][j - 2]) : best;
    }
}
