package tautlog.recording;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/**
 * Evidence that is neither sample nor pulse: a type, whole numbers, texts. Types and their fields: {@code
 * analyzer/RECORDING.md}, "Events".
 *
 * @param samplesBefore how many frames of samples of its span came before it
 * @param shaftsBefore how many shaft frames of its span came before it
 */
@SuppressWarnings("ArrayRecordComponent") // moved about, never compared
record Event(Type type, int samplesBefore, int shaftsBefore, long[] numbers, List<String> texts) {
    /** What an event is. Codes and counts are those of the file. */
    enum Type {
        START(1, 7, 6),
        INPUT(2, 5, 0),
        HOOKUP(3, 1, 2),
        MARK(4, 1, 1),
        HEALTH(5, 4, 0),
        CLOCK(6, 2, 0),
        TALLY(7, 3, 1),
        END(8, 1, 0),
        ZERO(9, 2, 1),
        POSITION(10, 5, 0),
        THINNED(11, 3, 2);

        final int code;
        final int numbers;
        final int texts;

        Type(int code, int numbers, int texts) {
            this.code = code;
            this.numbers = numbers;
            this.texts = texts;
        }

        static Type of(int code) {
            for (Type type : values()) {
                if (type.code == code) {
                    return type;
                }
            }
            throw new IndexOutOfBoundsException("an event of type " + code);
        }
    }

    static Event of(Type type, long... numbers) {
        return new Event(type, 0, 0, numbers, List.of());
    }

    static Event of(Type type, List<String> texts, long... numbers) {
        return new Event(type, 0, 0, numbers, texts);
    }

    Event after(int sampleFrames, int shaftFrames) {
        return new Event(type, sampleFrames, shaftFrames, numbers, texts);
    }

    static Event start(String winch, OutingStart start) {
        Instrument i = start.instrument();
        long[] numbers = {
            i.firmwareMajor(),
            i.firmwareMinor(),
            i.boot(),
            i.tickHz(),
            i.rateMillihertz(),
            i.fullScale(),
            i.pulsesPerRevolution()
        };
        List<String> texts = List.of(
                winch,
                start.program(),
                i.id(),
                start.calibration().toml(),
                start.source().name(),
                start.rigToml());
        return of(Type.START, texts, numbers);
    }

    /** @throws IllegalArgumentException if a number is out of its range, or the calibration cannot be read */
    OutingStart asStart() {
        Instrument instrument = new Instrument(
                texts.get(2),
                (int) numbers[0],
                (int) numbers[1],
                numbers[2],
                numbers[3],
                numbers[4],
                (int) numbers[5],
                (int) numbers[6]);
        OutingStart.Source source = OutingStart.Source.valueOf(texts.get(4));
        return new OutingStart(instrument, texts.get(5), StoredCalibrations.of(texts.get(3)), texts.get(1), source);
    }

    static Event position(Position at) {
        return of(Type.POSITION, at.tick(), at.latitudeE7(), at.longitudeE7(), at.satellites(), at.dilutionTenths());
    }

    private Position asPosition() {
        return new Position(
                numbers[0],
                Math.toIntExact(numbers[1]),
                Math.toIntExact(numbers[2]),
                Math.toIntExact(numbers[3]),
                Math.toIntExact(numbers[4]));
    }

    /**
     * All blocks of samples of an outing were thinned because the disk was nearly full.
     *
     * @param utcMicros when; 0 when no clock was known
     * @param rest {@link ThinnedRest#digest}
     */
    static Event thinned(long utcMicros, long blocks, long samples, String rest) {
        return of(Type.THINNED, List.of("DISK", rest), utcMicros, blocks, samples);
    }

    static Event tally(Tally tally) {
        StringBuilder rejected = new StringBuilder();
        tally.rejected()
                .forEach((name, count) ->
                        rejected.append(name).append('=').append((long) count).append('\n'));
        return of(
                Type.TALLY,
                List.of(rejected.toString()),
                tally.lostFrames(),
                tally.repeatedFrames(),
                tally.heldFrames());
    }

    Tally asTally() {
        Map<String, Long> rejected = new TreeMap<>();
        texts.get(0).lines().forEach(line -> {
            int equals = line.lastIndexOf('=');
            rejected.put(line.substring(0, Math.max(0, equals)), Long.valueOf(line.substring(equals + 1)));
        });
        return new Tally(rejected, numbers[0], numbers[1], numbers[2]);
    }

    /** @throws IllegalArgumentException if a word or number in it is not known */
    void requireReadable() {
        switch (type) {
            case START -> asStart();
            case HOOKUP -> HookupSource.valueOf(texts.get(1));
            case TALLY -> asTally();
            case ZERO -> ZeroSource.valueOf(texts.get(0));
            case POSITION -> asPosition();
            default -> {}
        }
    }

    /** True when it acts at the sample with its first number. */
    boolean isKeyedByNumber() {
        return type == Type.INPUT || type == Type.HOOKUP || type == Type.MARK || type == Type.ZERO;
    }

    /** Makes the call that this event records; start and end make none. */
    void tell(Evidence sink) {
        switch (type) {
            case INPUT -> sink.input(numbers[0], numbers[1], (int) numbers[2], (int) numbers[3], (int) numbers[4]);
            case HOOKUP -> sink.hookup(numbers[0], texts.get(0), HookupSource.valueOf(texts.get(1)));
            case MARK -> sink.mark(numbers[0], texts.get(0));
            case HEALTH -> sink.health(numbers[0], (int) numbers[1], (int) numbers[2], numbers[3]);
            case CLOCK -> sink.clock(numbers[0], numbers[1]);
            case TALLY -> sink.tally(asTally());
            case ZERO -> sink.zero(numbers[0], (int) numbers[1], ZeroSource.valueOf(texts.get(0)));
            case POSITION -> sink.position(asPosition());
            case START, END, THINNED -> {}
        }
    }
}
