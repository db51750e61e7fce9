package tautlog.recording;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import tautlog.sample.ClockFix;
import tautlog.sample.Tally;

/** Sums up the outings of a recording from its rows, without decoding samples; those whose start is lost apart. */
final class Outings {
    private final Map<Integer, Summary> summaries = new TreeMap<>();

    /** What is known of one outing so far. */
    private static final class Summary {
        @org.jspecify.annotations.Nullable
        OutingStart start;

        String startReason = "its start block is missing";
        long samples;
        boolean samplesAreKnown = true;
        long firstNumber;
        long lastNumber;
        long firstTick;
        long lastTick;
        boolean ended;
        boolean closed;
        boolean thinned;
        final List<ClockFix> fixes = new ArrayList<>();
        Tally tally = Tally.NONE;

        void reach(long count, Reach reach) {
            if (samples == 0) {
                firstNumber = reach.firstNumber();
                firstTick = reach.firstTick();
            }
            samples += count;
            lastNumber = reach.lastNumber();
            lastTick = reach.lastTick();
        }

        void events(List<Event> events) {
            for (Event event : events) {
                switch (event.type()) {
                    case START -> start = event.asStart();
                    case CLOCK -> fixes.add(new ClockFix(event.numbers()[0], event.numbers()[1]));
                    case TALLY -> tally = event.asTally();
                    case END -> {
                        closed = true;
                        ended = event.numbers()[0] == 0;
                    }
                    default -> {}
                }
            }
        }
    }

    private Outings() {}

    static Outings read(Rows rows) throws SQLException {
        Outings outings = new Outings();
        rows.heads(outings::add);
        rows.outingsWithTails().forEach(outings::summary);
        outings.readTails(rows);
        return outings;
    }

    private Summary summary(int outing) {
        return summaries.computeIfAbsent(outing, key -> new Summary());
    }

    private void add(EvidenceRow row) {
        Summary summary = summary(row.outing());
        if (row.is(Block.Kind.SAMPLES)) {
            summary.reach(row.count(), row.reach());
        } else if (!row.is(Block.Kind.SHAFT)) {
            addEvents(row, summary);
        }
        summary.thinned |= row.is(Block.Kind.THINNING);
        summary.samplesAreKnown &= row.count() >= 0 && Block.Kind.isKnown(row.kind());
    }

    private static void addEvents(EvidenceRow row, Summary summary) {
        try {
            Block block = row.open();
            summary.events(EventCodec.decode(block.content(), block.count()));
        } catch (DamagedBlockException | IndexOutOfBoundsException | IllegalArgumentException e) {
            summary.closed |= row.is(Block.Kind.END); // what it held is lost, that it was there is not
            if (row.is(Block.Kind.START)) {
                summary.startReason = "its start block is damaged: " + String.valueOf(e.getMessage());
            }
        }
    }

    private void readTails(Rows rows) throws SQLException {
        SpanCodec codec = new SpanCodec();
        for (Map.Entry<Integer, Summary> entry : summaries.entrySet()) {
            if (!entry.getValue().closed) {
                TailRows tail = TailRows.read(rows, entry.getKey(), codec);
                Span span = tail.span();
                entry.getValue().samplesAreKnown &= tail.damaged().isEmpty();
                if (span.samples.frames > 0) {
                    entry.getValue().reach(span.samples.samples(), Reach.of(span));
                }
                entry.getValue().events(span.events);
            }
        }
    }

    /** Those whose start can be read, oldest first. */
    List<Outing> list() {
        List<Outing> list = new ArrayList<>();
        summaries.forEach((index, s) -> {
            if (s.start != null) {
                list.add(new Outing(
                        index,
                        s.start,
                        s.samples,
                        s.firstNumber,
                        s.lastNumber,
                        s.firstTick,
                        s.lastTick,
                        s.ended,
                        s.closed,
                        s.thinned,
                        s.fixes,
                        s.tally));
            }
        });
        return list;
    }

    /** Those whose start cannot be read, oldest first. */
    List<LostOuting> lost() {
        List<LostOuting> lost = new ArrayList<>();
        summaries.forEach((index, s) -> {
            if (s.start == null) {
                lost.add(new LostOuting(
                        index, s.startReason, s.samplesAreKnown ? OptionalLong.of(s.samples) : OptionalLong.empty()));
            }
        });
        return lost;
    }
}
