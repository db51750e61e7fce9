package tautlog.desk.exporting;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.DayReading;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Refusals;
import tautlog.desk.report.LeftOut;
import tautlog.detect.Detection;
import tautlog.recording.RecordingException;
import tautlog.sample.Evidence;
import tautlog.sample.ZeroShift;

/** Writes a history as a table, outing after outing, with rig and calibration of the day. */
public final class Export {
    private final History history;
    private final Tables out;
    private final List<LeftOut.OfBlock> damaged = new ArrayList<>();
    private final List<LeftOut.OfOuting> outingsLeftOut = new ArrayList<>();

    public Export(History history, Tables out) {
        this.history = history;
        this.out = out;
    }

    /** Every sample: number, tick, UTC, counts, newtons, hookup, limit, share. */
    public void samples() throws IOException {
        table(SampleRows.COLUMNS, this::samples);
    }

    /** Every second: least, mean and greatest tension, shaft speed, share, flags; of a thinned outing as said on the day. */
    public void seconds() throws IOException {
        table(SecondRows.COLUMNS, this::seconds);
    }

    /** Writes the rows of one outing. */
    private interface OfOuting {
        void write(History.Member member, Read read, Cells cells) throws IOException;
    }

    /** @param ordinal the outing's place among those that are in the table, from 1 */
    private record Read(DayReading day, int ordinal) {}

    private void table(List<Column> columns, OfOuting rows) throws IOException {
        try (Cells cells = out.begin(columns)) {
            int ordinal = 0;
            for (History.Member member : history.members()) {
                Optional<DayReading> day = day(member, ordinal + 1);
                if (day.isPresent()) {
                    ordinal++;
                    rows.write(member, new Read(day.get(), ordinal), cells);
                }
            }
        }
    }

    /** Empty, and left out, where nothing tells what its counts mean. */
    private Optional<DayReading> day(History.Member member, int ordinal) {
        try {
            return Optional.of(DayReading.of(member, ordinal));
        } catch (ConfigException e) {
            leaveOut(member, Refusals.rig(member.file(), e));
        } catch (RecordingException misfit) {
            leaveOut(member, misfit);
        }
        return Optional.empty();
    }

    private void leaveOut(History.Member member, RecordingException why) {
        outingsLeftOut.add(Refusals.outing(member.file(), member.index(), member.samples(), why));
    }

    private void samples(History.Member member, Read read, Cells cells) throws IOException {
        if (member.thinned()) {
            outingsLeftOut.add(new LeftOut.OfOuting(
                    member.file().toString(),
                    member.index() + 1,
                    "its readings were thinned because the disk was nearly full",
                    OptionalLong.of(member.samples())));
        }
        try {
            replay(member, read.day(), new SampleRows(read.day(), read.ordinal(), cells));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void seconds(History.Member member, Read read, Cells cells) throws IOException {
        DayReading day = read.day();
        SecondRows rows = new SecondRows(day, read.ordinal());
        Detection detection = new Detection(day.instrument(), day.rig(), day.calibration(), rows);
        replay(member, day, new ZeroShift(day.instrument(), detection));
        if (member.thinned()) {
            member.recording().seconds(member.outing()).forEach(rows::second);
        }
        rows.write(cells);
    }

    /** What of the history could not be read, outings and blocks that the export met included. */
    public LeftOut leftOut() {
        LeftOut before = history.leftOut();
        List<LeftOut.OfOuting> outings = new ArrayList<>(before.outings());
        outings.addAll(outingsLeftOut);
        return new LeftOut(before.recordings(), outings, before.blocks()).with(damaged);
    }

    private void replay(History.Member member, DayReading day, Evidence sink) throws RecordingException {
        member.recording()
                .replay(member.outing(), day.choosing(sink))
                .forEach(damage -> damaged.add(new LeftOut.OfBlock(member.file().toString(), damage.summary())));
        if (!member.outing().closed()) {
            sink.end();
        }
    }
}
