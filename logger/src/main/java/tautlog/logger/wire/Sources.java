package tautlog.logger.wire;

import java.util.ArrayDeque;
import tautlog.sample.Instrument;

/**
 * Whether one instrument speaks on the line or two, by their HELLOs: a boot number differs at every start, so one that comes back
 * after another's was heard is no restart. Two of the same id and the same boot number cannot be told apart.
 */
final class Sources {
    /** Chosen: each says HELLO every second; a number that comes back after longer may be another start's by chance. */
    static final long REMEMBERED_NANOS = 10_000_000_000L;

    /** Chosen: so many HELLOs of one alone show that the other is gone. */
    static final long ALONE_NANOS = 5_000_000_000L;

    private static final int MOST = 4;

    /** One start of one instrument; made when it is first heard. */
    private static final class Heard {
        private final String id;
        private final long boot;
        private long nanos;

        Heard(Instrument instrument) {
            id = instrument.id();
            boot = instrument.boot();
        }

        boolean is(Instrument instrument) {
            return boot == instrument.boot() && id.equals(instrument.id());
        }
    }

    private final ArrayDeque<Heard> recent = new ArrayDeque<>();
    private boolean wereTwo;
    private long lastOtherNanos;

    /** A HELLO came. */
    void hello(Instrument instrument, long nanos) {
        if (recent.isEmpty() || !recent.getLast().is(instrument)) {
            another(instrument, nanos);
        }
        recent.getLast().nanos = nanos;
    }

    private void another(Instrument instrument, long nanos) {
        boolean cameBack =
                recent.stream().anyMatch(heard -> heard.is(instrument) && nanos - heard.nanos < REMEMBERED_NANOS);
        if (cameBack || areTwo(nanos)) {
            wereTwo = true;
            lastOtherNanos = nanos;
        }
        recent.removeIf(heard -> heard.is(instrument));
        if (recent.size() == MOST) {
            recent.removeFirst();
        }
        recent.add(new Heard(instrument));
    }

    /** Whether two were heard, the last time less than {@link #ALONE_NANOS} ago. */
    boolean areTwo(long nanos) {
        return wereTwo && nanos - lastOtherNanos < ALONE_NANOS;
    }

    /** Another line was opened: who spoke on the one before does not matter. */
    void forget() {
        recent.clear();
        wereTwo = false;
    }
}
