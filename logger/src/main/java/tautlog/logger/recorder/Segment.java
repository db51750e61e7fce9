package tautlog.logger.recorder;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.OutingStart;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/**
 * A piece of the {@link Backlog}: events copied into words, so that a sample costs four bytes and no object.
 *
 * <pre>
 *   kind | words of that kind …      a long takes two words, low one first; an object stands in {@code objects}, in order
 * </pre>
 */
final class Segment {
    static final int WORDS = 16_384;

    private static final int BEGIN = 0;
    private static final int TENSION = 1;
    private static final int SHAFT = 2;
    private static final int INPUT = 3;
    private static final int HOOKUP = 4;
    private static final int MARK = 5;
    private static final int HEALTH = 6;
    private static final int CLOCK = 7;
    private static final int TALLY = 8;
    private static final int FINDING = 9;
    private static final int SECOND = 10;
    private static final int END = 11;
    private static final int ZERO = 12;
    private static final int POSITION = 13;

    private record Begin(OutingStart start, Optional<Long> utcMicros) {}

    private record Hookup(String id, HookupSource by) {}

    private final int[] words = new int[WORDS];
    private final List<Object> objects = new ArrayList<>();
    private int used;
    private int read;
    private int objectsRead;
    private int[] counts = new int[128];
    private long[] pulseTicks = new long[128];

    /** How many words are free. */
    int free() {
        return WORDS - used;
    }

    boolean isEmpty() {
        return used == 0;
    }

    void clear() {
        used = 0;
        read = 0;
        objectsRead = 0;
        objects.clear();
    }

    static int tensionWords(int n) {
        return 7 + n;
    }

    static int shaftWords(int n) {
        return 6 + 2 * n;
    }

    void begin(OutingStart start, Optional<Long> utcMicros) {
        put(BEGIN);
        objects.add(new Begin(start, utcMicros));
    }

    void tension(long number, long tick, int flags, int[] from, int at, int n) {
        put(TENSION);
        put(number);
        put(tick);
        put(flags);
        put(n);
        System.arraycopy(from, at, words, used, n);
        used += n;
    }

    void shaft(long tick, long pulses, long[] ticks, int n) {
        put(SHAFT);
        put(tick);
        put(pulses);
        put(n);
        for (int i = 0; i < n; i++) {
            put(ticks[i]);
        }
    }

    void input(long atNumber, long tick, int selector, int present, int state) {
        put(INPUT);
        put(atNumber);
        put(tick);
        put(selector);
        put(present);
        put(state);
    }

    void hookup(long atNumber, String id, HookupSource by) {
        put(HOOKUP);
        put(atNumber);
        objects.add(new Hookup(id, by));
    }

    void mark(long atNumber, String note) {
        put(MARK);
        put(atNumber);
        objects.add(note);
    }

    void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        put(HEALTH);
        put(tick);
        put(supplyMillivolts);
        put(temperatureDecidegrees);
        put(lost);
    }

    void clock(long tick, long utcMicros) {
        put(CLOCK);
        put(tick);
        put(utcMicros);
    }

    void zero(long atNumber, int shiftCounts, ZeroSource by) {
        put(ZERO);
        put(atNumber);
        put(shiftCounts);
        objects.add(by);
    }

    void position(Position position) {
        put(POSITION);
        objects.add(position);
    }

    void tally(Tally tally) {
        put(TALLY);
        objects.add(tally);
    }

    void finding(Finding finding) {
        put(FINDING);
        objects.add(finding);
    }

    void second(Second second) {
        put(SECOND);
        objects.add(second);
    }

    void end() {
        put(END);
    }

    /** Makes the call of the next event; false when there is none left. */
    boolean replayNext(LiveEvents sink) {
        if (read == used) {
            return false;
        }
        switch (get()) {
            case BEGIN -> {
                Begin begin = (Begin) object();
                sink.begin(begin.start, begin.utcMicros);
            }
            case TENSION -> replayTension(sink);
            case SHAFT -> replayShaft(sink);
            case INPUT -> sink.input(getLong(), getLong(), get(), get(), get());
            case HOOKUP -> {
                Hookup hookup = (Hookup) object();
                sink.hookup(getLong(), hookup.id, hookup.by);
            }
            case MARK -> sink.mark(getLong(), (String) object());
            case HEALTH -> sink.health(getLong(), get(), get(), getLong());
            case CLOCK -> sink.clock(getLong(), getLong());
            case ZERO -> sink.zero(getLong(), get(), (ZeroSource) object());
            case POSITION -> sink.position((Position) object());
            case TALLY -> sink.tally((Tally) object());
            case FINDING -> sink.finding((Finding) object());
            case SECOND -> sink.second((Second) object());
            case END -> sink.end();
            default -> throw new IllegalStateException("no such event");
        }
        return true;
    }

    private void replayTension(LiveEvents sink) {
        long number = getLong();
        long tick = getLong();
        int flags = get();
        int n = get();
        if (counts.length < n) {
            counts = new int[n];
        }
        System.arraycopy(words, read, counts, 0, n);
        read += n;
        sink.tension(number, tick, flags, counts, 0, n);
    }

    private void replayShaft(LiveEvents sink) {
        long tick = getLong();
        long pulses = getLong();
        int n = get();
        if (pulseTicks.length < n) {
            pulseTicks = new long[n];
        }
        for (int i = 0; i < n; i++) {
            pulseTicks[i] = getLong();
        }
        sink.shaft(tick, pulses, pulseTicks, n);
    }

    private Object object() {
        return objects.get(objectsRead++);
    }

    private void put(int word) {
        words[used++] = word;
    }

    private void put(long twoWords) {
        words[used++] = (int) twoWords;
        words[used++] = (int) (twoWords >>> 32);
    }

    private int get() {
        return words[read++];
    }

    private long getLong() {
        long low = words[read++] & 0xffff_ffffL;
        return low | (long) words[read++] << 32;
    }
}
