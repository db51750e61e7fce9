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
    private static final int TYPE = 0x3F;
    private static final int SAMPLES_MOVED = 0x40;
    private static final int SHAFTS_MOVED = 0x80;

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
            encodePlace(event.type(), event.samplesBefore() - samples, event.shaftsBefore() - shafts, out);
            samples = event.samplesBefore();
            shafts = event.shaftsBefore();
            codec.encode(event, out);
        }
    }

    private static void encodePlace(Event.Type type, int samples, int shafts, ByteWriter out) {
        out.u8(type.code | (samples != 0 ? SAMPLES_MOVED : 0) | (shafts != 0 ? SHAFTS_MOVED : 0));
        if (samples != 0) {
            out.varint(samples);
        }
        if (shafts != 0) {
            out.varint(shafts);
        }
    }

    private void encode(Event event, ByteWriter out) {
        long[] numbers = event.numbers();
        int surprising = 0;
        for (int i = 0; i < numbers.length; i++) {
            surprising |= numbers[i] == expected(event.type(), i) ? 0 : 1 << i;
        }
        out.u8(surprising);
        for (int i = 0; i < numbers.length; i++) {
            if ((surprising & (1 << i)) != 0) {
                out.zigzag(numbers[i] - expected(event.type(), i));
            }
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
            int head = in.u8();
            Event.Type type = Event.Type.of(head & TYPE);
            samples += (head & SAMPLES_MOVED) == 0 ? 0 : in.count(Block.GREATEST_COUNT);
            shafts += (head & SHAFTS_MOVED) == 0 ? 0 : in.count(Block.GREATEST_COUNT);
            events.add(codec.decode(type, in).after(samples, shafts));
        }
        return events;
    }

    private Event decode(Event.Type type, ByteReader in) {
        long[] numbers = new long[type.numbers];
        int surprising = in.u8();
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = expected(type, i) + ((surprising & (1 << i)) == 0 ? 0 : in.zigzag());
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
                || (field == 0
                        && (type == Event.Type.INPUT || type == Event.Type.HEALTH || type == Event.Type.POSITION))
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
