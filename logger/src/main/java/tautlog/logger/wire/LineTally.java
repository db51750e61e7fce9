package tautlog.logger.wire;

import java.util.Map;
import java.util.TreeMap;
import tautlog.sample.Tally;

/** Counts what the line lost, until the outing that it is told to is over. */
final class LineTally {
    private static final FrameFault[] FAULTS = FrameFault.values();
    private static final int NO_SEQ = -1;

    private final Map<FrameFault, long[]> rejected = new java.util.EnumMap<>(FrameFault.class);
    private long lostFrames;
    private long repeatedFrames;
    private long heldFrames;
    private long framesOfTwo;
    private int lastSeq = NO_SEQ;
    private boolean isChanged;

    LineTally() {
        for (FrameFault fault : FAULTS) {
            rejected.put(fault, new long[1]);
        }
    }

    void rejected(FrameFault fault) {
        java.util.Objects.requireNonNull(rejected.get(fault))[0]++;
        isChanged = true;
    }

    /** A good frame with sequence number {@code seq} is being dealt with. */
    void heard(int seq) {
        if (lastSeq != NO_SEQ && seq != lastSeq) {
            int lost = (seq - lastSeq - 1) & 0xff;
            lostFrames += lost;
            isChanged |= lost > 0;
        }
        lastSeq = seq;
    }

    /** The next sequence number stands in no relation to the last: the instrument restarted or was silent for long. */
    void forgetSeq() {
        lastSeq = NO_SEQ;
    }

    void repeated() {
        repeatedFrames++;
        isChanged = true;
    }

    /** A frame was left out because two instruments speak on the line. */
    void ofTwo() {
        framesOfTwo++;
        isChanged = true;
    }

    void heldInVain() {
        heldFrames++;
        isChanged = true;
    }

    /** True once after something was counted. */
    boolean takeChange() {
        boolean was = isChanged;
        isChanged = false;
        return was;
    }

    Tally tally() {
        Map<String, Long> byName = new TreeMap<>();
        for (FrameFault fault : FAULTS) {
            long count = java.util.Objects.requireNonNull(rejected.get(fault))[0];
            if (count > 0) {
                byName.put(fault.name(), count);
            }
        }
        if (framesOfTwo > 0) {
            byName.put("TWO_INSTRUMENTS", framesOfTwo);
        }
        return new Tally(byName, lostFrames, repeatedFrames, heldFrames);
    }

    /** Begins to count for the next outing. */
    void clear() {
        rejected.values().forEach(count -> count[0] = 0);
        lostFrames = 0;
        repeatedFrames = 0;
        heldFrames = 0;
        framesOfTwo = 0;
        isChanged = false;
    }
}
