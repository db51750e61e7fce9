package tautlog.desk.pyramid;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.SealedSpan;
import tautlog.sample.Instrument;

/**
 * The levels of one outing. {@link #follow} brings it up to date and costs what is new; {@link #show} fills a band. Safe for several
 * threads. About 22 bytes for each 1,024 samples, in memory and on disk.
 */
public final class OutingPyramid {
    private final Instrument instrument;
    private final Extent sealed;
    private final List<SealedSpan> spans = new ArrayList<>();
    private Extent tail;
    private long row;
    private long samples;
    private long firstTick;
    private long lastTick;

    private OutingPyramid(Instrument instrument, Extent sealed) {
        this.instrument = instrument;
        this.sealed = sealed;
        tail = sealed.following();
    }

    /** Of an outing of which nothing was read yet. */
    public static OutingPyramid of(Outing outing) {
        return new OutingPyramid(
                outing.start().instrument(), new Extent(outing.start().instrument()));
    }

    /** Reads what {@code outing} holds more than at the last call; of a thinned outing nothing is there to read. */
    public synchronized void follow(Recording recording, Outing outing) throws RecordingException {
        long told = recording.follow(outing, row, sealed, () -> {
            tail = sealed.following();
            return tail;
        });
        spans.addAll(recording.sealedSpans(outing, row).stream()
                .filter(span -> span.lastRow() <= told)
                .toList());
        row = told;
        samples = outing.samples();
        firstTick = outing.firstTick();
        lastTick = outing.lastTick();
    }

    /** How many samples it knows; those of the outing at the last {@link #follow}. */
    public synchronized long samples() {
        return samples;
    }

    /** What was told beside the readings, in order. */
    public synchronized List<Told> told() {
        List<Told> all = new ArrayList<>(sealed.toldUntil(lastTick));
        all.addAll(tail.toldUntil(lastTick));
        return all;
    }

    /** The tick of the first frame. */
    public synchronized long firstTick() {
        return firstTick;
    }

    /** One sample's time after the newest sample; the first tick when there is none. */
    public synchronized long endTick() {
        List<Stretch> all = stretches();
        return all.isEmpty() ? firstTick : all.get(all.size() - 1).endTick;
    }

    /** The shown samples of a column are decoded from here down. */
    private static final double FROM_FILE = Stretch.SAMPLES;

    /** What can be asked for when columns are too short for what is kept: a way to open the recording. */
    public interface Source {
        /** A recording that the caller closes. */
        Recording open() throws RecordingException;
    }

    /**
     * Fills {@code tension} and {@code shaft}, which are of the same time, with what of it lies in this outing.
     *
     * @return whether the samples themselves were read
     */
    public synchronized boolean show(Outing outing, Scale scale, Source source, Band tension, Band shaft)
            throws RecordingException {
        long begin = tickAt(scale.axis(), tension.from());
        long end = tickAt(scale.axis(), tension.to());
        if (outing.thinned()) {
            tension.missing(
                    scale.axis().micros(outing.firstTick()), scale.axis().micros(outing.lastTick()));
            return false;
        }
        double perColumn = (double) (tension.to() - tension.from())
                / tension.columns()
                / 1e6
                * instrument.rate().hertz();
        if (perColumn < FROM_FILE) {
            samples(outing, scale, source, new Asked(begin, end), tension, shaft);
            return true;
        }
        int level = 0;
        for (double n = FROM_FILE * Levels.FAN; n <= perColumn; n *= Levels.FAN) {
            level++;
        }
        new LevelReading(scale, tension, level).read(stretches(), begin, end);
        ShaftReading.read(List.of(sealed.shaft, tail.shaft), scale, begin, end, shaft);
        return false;
    }

    private List<Stretch> stretches() {
        List<Stretch> all = new ArrayList<>(sealed.stretches);
        all.addAll(tail.stretches);
        return all;
    }

    /** A time in ticks. */
    record Asked(long begin, long end) {
        boolean overlaps(long first, long last) {
            return last >= begin && first <= end;
        }
    }

    private void samples(Outing outing, Scale scale, Source source, Asked asked, Band tension, Band shaft)
            throws RecordingException {
        SampleReading reading = new SampleReading(instrument, stretches(), scale, asked, tension, shaft);
        int first = 0;
        while (first < spans.size() && spans.get(first).lastTick() < asked.begin()) {
            first++;
        }
        first = Math.max(0, first - 2);
        int last = first;
        while (last < spans.size() && spans.get(last).firstTick() <= asked.end()) {
            last++;
        }
        try (Recording recording = source.open()) {
            if (first < last) {
                recording.replay(
                        outing, spans.get(first).firstRow(), spans.get(last - 1).lastRow(), reading);
            }
            if (last == spans.size()) {
                recording.follow(outing, row, reading, () -> reading);
            }
        }
    }

    /** The first tick of this outing that stands at {@code micros} or later. */
    private long tickAt(Scale.Axis axis, long micros) {
        long low = firstTick - 1;
        long high = Math.max(lastTick, endTick()) + 1;
        while (high - low > 1) {
            long middle = low + (high - low) / 2;
            if (axis.micros(middle) >= micros) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    void write(DataOutput out) throws IOException {
        out.writeLong(row);
        out.writeLong(samples);
        out.writeLong(firstTick);
        out.writeLong(lastTick);
        out.writeInt(spans.size());
        for (SealedSpan span : spans) {
            out.writeLong(span.firstRow());
            out.writeLong(span.lastRow());
            out.writeLong(span.firstTick());
            out.writeLong(span.lastTick());
        }
        sealed.write(out);
    }

    static OutingPyramid read(Instrument instrument, DataInput in) throws IOException {
        long row = in.readLong();
        long samples = in.readLong();
        long firstTick = in.readLong();
        long lastTick = in.readLong();
        List<SealedSpan> spans = new ArrayList<>();
        int n = in.readInt();
        for (int i = 0; i < n; i++) {
            spans.add(new SealedSpan(in.readLong(), in.readLong(), in.readLong(), in.readLong()));
        }
        OutingPyramid read = new OutingPyramid(instrument, Extent.read(instrument, in));
        read.row = row;
        read.samples = samples;
        read.firstTick = firstTick;
        read.lastTick = lastTick;
        read.spans.addAll(spans);
        return read;
    }
}
