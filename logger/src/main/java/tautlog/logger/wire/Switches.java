package tautlog.logger.wire;

import tautlog.sample.Evidence;

/**
 * The instrument's switches in one outing: passed on when they change, at the number of the sample that comes next.
 * Before the first sample that number is not known; what changed until then is passed on with it: the last position, and
 * one mark if the button was pressed.
 *
 * <p>When no word came of them for 3 s, clutch and brake are passed on as not known, so that a lost INPUT leaves no old state
 * behind; the selector stays where it was, and the button too.
 */
final class Switches {
    private static final int MARK = 1;
    private static final int KNOWN_BITS = 0b111;
    private static final int NEVER = -1;

    private final Evidence evidence;
    private final OutingSink sink;
    private boolean hasNumber;
    private long nextNumber;

    private int selector = NEVER;
    private int present;
    private int state;
    private int toldSelector;

    private boolean isWaiting;
    private boolean isMarkWaiting;
    private long waitingTick;

    Switches(Evidence evidence, OutingSink sink) {
        this.evidence = evidence;
        this.sink = sink;
    }

    void stand(long tick, int newSelector, int newPresent, int newState) {
        int means = newPresent & KNOWN_BITS;
        int stands = newState & means;
        if (newSelector == selector && means == present && stands == state) {
            return;
        }
        boolean isPressed = (stands & MARK) != 0 && (state & MARK) == 0;
        selector = newSelector;
        present = means;
        state = stands;
        waitingTick = tick;
        isWaiting = true;
        isMarkWaiting |= isPressed;
        if (hasNumber) {
            tell();
        }
    }

    /** No INPUT came for long before {@code tick}, that of sample {@code number}. */
    void unheard(long tick, long number) {
        nextNumber(number);
        int known = present & MARK;
        if (present != known) {
            present = known;
            state &= known;
            waitingTick = tick;
            tell();
        }
    }

    void firstSample(long number) {
        nextNumber(number);
        if (isWaiting) {
            tell();
        }
    }

    void nextNumber(long number) {
        hasNumber = true;
        nextNumber = number;
    }

    private void tell() {
        isWaiting = false;
        evidence.input(nextNumber, waitingTick, selector, present, state);
        if (selector != toldSelector) {
            toldSelector = selector;
            sink.selector(nextNumber, selector);
        }
        if (isMarkWaiting) {
            isMarkWaiting = false;
            evidence.mark(nextNumber, "");
        }
    }
}
