package tautlog.desk.uncertainty;

/**
 * How fast a line rose, as its readings tell. The time from foot to greatest reading alone does not: on a level top the greatest reading is a
 * matter of noise and may come long after the rise. Definition: {@code analyzer/FINDINGS.md}, Shock, Read as.
 *
 * @param samples quarter period of the half sine that is as steep, never more than from foot to greatest reading; 1 or more
 * @param isResolved false when a half sine of four samples is not that steep: what lies between two readings is not known
 */
record Steepness(double samples, boolean isResolved) {
    private static final int RESOLVED_FROM = 4;
    /**
     * More than these parts of the rise within 1, 2 and 3 samples is too fast. A half sine of four samples rises by 0.383, 0.707 and 0.924;
     * chosen a little lower, most at 3, so that noise at foot and top hides no rise of three samples.
     */
    private static final double[] MOST_PARTS = {0.38, 0.70, 0.90};

    /** Nothing between two readings is known. */
    static final Steepness TOO_STEEP = new Steepness(1, false);

    /** Of a rise of which only the length is known. */
    static Steepness ofLength(long samples) {
        return new Steepness(Math.max(1, samples), samples >= RESOLVED_FROM);
    }

    /**
     * Of the present readings from foot to greatest, both included. Where one is missing its neighbours count as one sample apart: what
     * the line did between them is not known.
     *
     * @param length sample numbers from foot to greatest
     * @param newtons two or more, the last greater than the first
     */
    static Steepness of(long length, double[] newtons) {
        double rise = newtons[newtons.length - 1] - newtons[0];
        Steepness whole = ofLength(length);
        double samples = whole.samples;
        boolean isResolved = whole.isResolved;
        for (int k = 1; k <= MOST_PARTS.length; k++) {
            double part = greatestGain(newtons, k) / rise;
            isResolved &= part <= MOST_PARTS[k - 1];
            samples = Math.min(samples, k * Math.PI / 2 / Math.asin(Math.min(1, part)));
        }
        return new Steepness(Math.max(1, samples), isResolved);
    }

    /** Within k samples, or in all where there are fewer. */
    private static double greatestGain(double[] newtons, int k) {
        int apart = Math.min(k, newtons.length - 1);
        double greatest = 0;
        for (int i = apart; i < newtons.length; i++) {
            greatest = Math.max(greatest, newtons[i] - newtons[i - apart]);
        }
        return greatest;
    }

    /** Where the line may have been between two readings: the crest of the half sine; the greatest reading where that is negative. */
    double crest(double peakNewtons) {
        return Math.max(peakNewtons, peakNewtons / Math.cos(Math.PI / (4 * samples)));
    }
}
