package tautlog.recording;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Codes a list of events. Layout: {@code analyzer/RECORDING.md}, "Events".
 *
 * <p>Each number is foretold from the two events of the same type before it, going on as they did; a text equal to the one
 * before costs a byte.
 */
final class EventCodec {
    private final Map<Event.Type, long[]> last = new EnumMap<>(Event.Type.class);
    private final Map<Event.Type, long[]> step = new EnumMap<>(Event.Type.class);
    private final Map<Event.Type, List<String>> texts = new EnumMap<>(Event.Type.class);

    private EventCodec() {
        for (Event.Type type : Event.Type.values()) {
            last.put(type, new long[type.numbers]);
            step.put(type, new long[type.numbers]);
            texts.put(type, new ArrayList<>(Collections.nCopies(type.texts, "")));
        }
    }

    static void encode(List<Event> events, ByteWriter out) {
        EventCodec codec = new EventCodec();
        int samples = 0;
        int shafts = 0;
        for (Event event : events) {
            out.u8(event.type().code);
            out.varint(event.samplesBefore() - samples);
            out.varint(event.shaftsBefore() - shafts);
            samples = event.samplesBefore();
            shafts = event.shaftsBefore();
            codec.encode(event, out);
        }
    }

    private void encode(Event event, ByteWriter out) {
        long[] numbers = event.numbers();
        for (int i = 0; i < numbers.length; i++) {
            out.zigzag(numbers[i] - expected(event.type(), i));
            advance(event.type(), i, numbers[i]);
        }
        List<String> before = texts(event.type());
        for (int i = 0; i < before.size(); i++) {
            String text = event.texts().get(i);
            if (text.equals(before.get(i))) {
                out.u8(0);
            } else {
                out.u8(1);
                out.text(text);
            }
            before.set(i, text);
        }
    }

    /**
     * Reads {@code count} events.
     *
     * @throws IndexOutOfBoundsException if the bytes are no such content
     * @throws IllegalArgumentException if an event cannot be what it says
     */
    static List<Event> decode(ByteReader in, int count) {
        EventCodec codec = new EventCodec();
        List<Event> events = new ArrayList<>();
        int samples = 0;
        int shafts = 0;
        for (int i = 0; i < count; i++) {
            Event.Type type = Event.Type.of(in.u8());
            samples += in.count(Block.GREATEST_COUNT);
            shafts += in.count(Block.GREATEST_COUNT);
            events.add(codec.decode(type, in).after(samples, shafts));
        }
        return events;
    }

    private Event decode(Event.Type type, ByteReader in) {
        long[] numbers = new long[type.numbers];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = expected(type, i) + in.zigzag();
            advance(type, i, numbers[i]);
        }
        List<String> now = texts(type);
        for (int i = 0; i < now.size(); i++) {
            if (in.u8() != 0) {
                now.set(i, in.text());
            }
        }
        Event event = new Event(type, 0, 0, numbers, List.copyOf(now));
        event.requireReadable();
        return event;
    }

    private long expected(Event.Type type, int field) {
        return numbers(last, type)[field] + numbers(step, type)[field];
    }

    /** Numbers that run on (ticks, sample numbers, times) are foretold by their last step, the rest by their last value. */
    private void advance(Event.Type type, int field, long value) {
        long[] before = numbers(last, type);
        boolean runsOn = type == Event.Type.CLOCK
                || (field == 0 && (type == Event.Type.INPUT || type == Event.Type.HEALTH))
                || (field == 1 && type == Event.Type.INPUT);
        numbers(step, type)[field] = runsOn && before[field] != 0 ? value - before[field] : 0;
        before[field] = value;
    }

    private static long[] numbers(Map<Event.Type, long[]> map, Event.Type type) {
        return java.util.Objects.requireNonNull(map.get(type));
    }

    private List<String> texts(Event.Type type) {
        return java.util.Objects.requireNonNull(texts.get(type));
    }
}
