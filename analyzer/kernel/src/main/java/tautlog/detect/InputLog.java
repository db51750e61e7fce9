package tautlog.detect;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;

/** What the instrument's switches said lately, by the sample number from which it holds. */
final class InputLog {
    private static final int CLUTCH = 2;
    private static final int BRAKE = 4;

    private record Entry(long number, int present, int state) {
        Known bit(int mask) {
            if ((present & mask) == 0) {
                return Known.UNKNOWN;
            }
            return (state & mask) == 0 ? Known.NO : Known.YES;
        }
    }

    private static final Entry NOTHING = new Entry(Long.MIN_VALUE, 0, 0);

    private final Deque<Entry> entries = new ArrayDeque<>();
    /** No entry is of a later number. */
    private long greatestNumber = Long.MIN_VALUE;

    private Known latestClutch = Known.UNKNOWN;

    void add(long number, int present, int state) {
        Entry last = entries.isEmpty() ? NOTHING : entries.getLast();
        if (present != last.present || state != last.state) {
            Entry entry = new Entry(number, present, state);
            entries.add(entry);
            greatestNumber = Math.max(greatestNumber, number);
            latestClutch = entry.bit(CLUTCH);
        }
    }

    Known clutchAt(long number) {
        return at(number).bit(CLUTCH);
    }

    Known brakeAt(long number) {
        return at(number).bit(BRAKE);
    }

    /** The clutch over all of {@code first} to {@code last}: unknown when it changed. */
    Known clutchFrom(long first, long last) {
        if (greatestNumber <= first) {
            return latestClutch;
        }
        Known known = clutchAt(first);
        for (Entry entry : entries) {
            if (entry.number > first && entry.number <= last && entry.bit(CLUTCH) != known) {
                return Known.UNKNOWN;
            }
        }
        return known;
    }

    /** Whether {@link #clutchFrom} says the same of all numbers from {@code first} on. */
    boolean isSteadyFrom(long first) {
        return greatestNumber <= first;
    }

    /** Nobody asks for a number below {@code number} any more. */
    void forgetBefore(long number) {
        while (entries.size() > 1) {
            Iterator<Entry> it = entries.iterator();
            it.next();
            if (it.next().number > number) {
                return;
            }
            entries.removeFirst();
        }
    }

    private Entry at(long number) {
        Entry latest = NOTHING;
        for (Entry entry : entries) {
            if (entry.number <= number) {
                latest = entry;
            }
        }
        return latest;
    }
}
