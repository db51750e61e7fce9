package tautlog.recording;

import java.util.List;
import tautlog.sample.Evidence;

/** Tells a span's shaft frames and events in their order between its frames of samples. */
final class SpanOrder {
    private final ShaftTable shaft;
    private final List<Event> events;
    private long[] pulseTicks = new long[64];
    private int nextShaft;
    private int nextEvent;

    SpanOrder(ShaftTable shaft, List<Event> events) {
        this.shaft = shaft;
        this.events = events;
    }

    /**
     * Tells what came before frame {@code frame} of samples and was not told yet.
     *
     * @param lastNumber what acts at a sample up to this number is told too: it must be known before that sample, also when
     *     frames before it are lost to damage
     */
    void tellBefore(int frame, long lastNumber, Evidence sink) {
        while (true) {
            boolean shaftDue = nextShaft < shaft.frames && shaft.samplesBefore[nextShaft] <= frame;
            boolean eventDue = nextEvent < events.size() && isDue(events.get(nextEvent), frame, lastNumber);
            if (eventDue && (!shaftDue || events.get(nextEvent).shaftsBefore() <= nextShaft)) {
                events.get(nextEvent++).tell(sink);
            } else if (shaftDue) {
                tellShaft(sink);
            } else {
                return;
            }
        }
    }

    /** Whether {@link #tellBefore} with the same parameters would tell an event. */
    boolean isEventDue(int frame, long lastNumber) {
        return nextEvent < events.size() && isDue(events.get(nextEvent), frame, lastNumber);
    }

    /** The first shaft frame that was not told. */
    int nextShaft() {
        return nextShaft;
    }

    /** The shaft frame behind those that {@link #tellBefore} would tell, where no event is due. */
    int shaftsBefore(int frame) {
        int end = nextShaft;
        while (end < shaft.frames && shaft.samplesBefore[end] <= frame) {
            end++;
        }
        return end;
    }

    /** The shaft frames before {@code shaftFrame} are told. */
    void toldShaftsBefore(int shaftFrame) {
        nextShaft = shaftFrame;
    }

    private static boolean isDue(Event event, int frame, long lastNumber) {
        return event.samplesBefore() <= frame || (event.isKeyedByNumber() && event.numbers()[0] <= lastNumber);
    }

    void tellRest(Evidence sink) {
        tellBefore(Integer.MAX_VALUE, Long.MAX_VALUE, sink);
    }

    private void tellShaft(Evidence sink) {
        int from = shaft.from[nextShaft];
        int n = shaft.length(nextShaft);
        if (n > pulseTicks.length) {
            pulseTicks = new long[n];
        }
        System.arraycopy(shaft.pulseTick, from, pulseTicks, 0, n);
        sink.shaft(shaft.tick[nextShaft], shaft.pulses[nextShaft], pulseTicks, n);
        nextShaft++;
    }
}
