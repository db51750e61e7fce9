package tautlog.desk.uncertainty;

/**
 * A reading that stands out of its neighbours: the greatest or the least of them.
 *
 * @param count less the shift of the zero
 * @param number of the sample
 * @param among of how many readings it is the greatest or the least; 1 when nothing was chosen
 */
public record Extreme(int count, long number, long among) {
    /** @throws IllegalArgumentException if {@code among} is below 1 */
    public Extreme {
        if (among < 1) {
            throw new IllegalArgumentException("among must be 1 or more, was " + among);
        }
    }

    /** By how many standard deviations of the noise the extreme of {@code among} readings lies too far out, at most. */
    double lift() {
        return Math.sqrt(2 * Math.log((double) among));
    }
}
