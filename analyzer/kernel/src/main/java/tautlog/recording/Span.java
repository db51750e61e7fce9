package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Second;

/**
 * What an outing told from one seal to the next: frames of samples, shaft frames, events, seconds. Closed by the frame or
 * event that no longer fits, so that spans depend on what was told alone and never on when it was committed.
 */
final class Span {
    private static final int PULSES = 16_384;
    private static final int SHAFTS = 4_096;
    private static final int EVENTS = 1_024;

    final int outing;
    int index;
    final FrameTable samples = new FrameTable();
    final ShaftTable shaft = new ShaftTable();
    final List<Event> events = new ArrayList<>();
    final List<Second> seconds = new ArrayList<>();

    Span(int outing, int index) {
        this.outing = outing;
        this.index = index;
    }

    /** Forgets what it holds, to hold what span {@code anotherIndex} told. */
    void restart(int anotherIndex) {
        index = anotherIndex;
        samples.clear();
        shaft.clear();
        events.clear();
        seconds.clear();
    }

    boolean isEmpty() {
        return samples.frames == 0 && shaft.frames == 0 && events.isEmpty() && seconds.isEmpty();
    }

    boolean hasRoomForSamples(int n) {
        return samples.frames == 0 || samples.samples() + n <= Block.SAMPLES;
    }

    boolean hasRoomForPulses(int n) {
        return shaft.frames == 0 || (shaft.frames < SHAFTS && shaft.pulseTicks() + n <= PULSES);
    }

    boolean hasRoomForEvent() {
        return events.size() < EVENTS;
    }

    void addEvent(Event event) {
        events.add(event.after(samples.frames, shaft.frames));
    }

    void addShaft(long tick, long pulses, long[] pulseTicks, int n) {
        shaft.add(tick, pulses, samples.frames, pulseTicks, 0, n);
    }
}
