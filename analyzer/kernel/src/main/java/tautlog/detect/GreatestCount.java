package tautlog.detect;

/** The greatest of some counts: a bound at once, the figure itself when it is asked for. Valid only during the call that hands it over. */
public interface GreatestCount {
    /** None of the counts is greater. */
    int atMost();

    /** The greatest, exactly; meaningless when there are no counts. May have to decode them. */
    int exactly();

    /** One that is known. */
    static GreatestCount of(int count) {
        return new GreatestCount() {
            @Override
            public int atMost() {
                return count;
            }

            @Override
            public int exactly() {
                return count;
            }
        };
    }
}
