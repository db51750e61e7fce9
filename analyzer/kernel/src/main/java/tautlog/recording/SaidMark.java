package tautlog.recording;

/**
 * Up to where somebody knows what was said of an outing.
 *
 * @param second index of the last second known; −1 for none
 * @param finding id of the last finding's row known; 0 for none
 */
public record SaidMark(long second, long finding) {
    public static final SaidMark NONE = new SaidMark(-1, 0);
}
