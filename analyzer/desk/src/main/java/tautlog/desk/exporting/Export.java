package tautlog.desk.exporting;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.DayReading;
import tautlog.desk.analysis.History;
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
    private final List<LeftOut.OfOuting> thinned = new ArrayList<>();

    public Export(History history, Tables out) {
        this.history = history;
        this.out = out;
    }

    /** Every sample: number, tick, UTC, counts, newtons, hookup, limit, share. */
    public void samples() throws IOException, ConfigException {
        try (Cells cells = out.begin(SampleRows.COLUMNS)) {
            samples(cells);
        }
    }

    private void samples(Cells cells) throws IOException, ConfigException {
        int outing = 0;
        for (History.Member member : history.members()) {
            outing++;
            DayReading day = DayReading.of(member, outing);
            if (member.outing().thinned()) {
                thinned.add(new LeftOut.OfOuting(
                        member.file().toString(),
                        member.outing().index() + 1,
                        "its readings were thinned because the disk was nearly full",
                        OptionalLong.of(member.outing().samples())));
            }
            try {
                replay(member, day, new SampleRows(day, outing, cells));
            } catch (UncheckedIOException e) {
                throw e.getCause();
            }
        }
    }

    /** Every second: least, mean and greatest tension, shaft speed, share, flags; of a thinned outing as said on the day. */
    public void seconds() throws IOException, ConfigException {
        try (Cells cells = out.begin(SecondRows.COLUMNS)) {
            seconds(cells);
        }
    }

    private void seconds(Cells cells) throws IOException, ConfigException {
        int outing = 0;
        for (History.Member member : history.members()) {
            outing++;
            DayReading day = DayReading.of(member, outing);
            SecondRows rows = new SecondRows(day, outing);
            Detection detection = new Detection(day.instrument(), day.rig(), day.calibration(), rows);
            replay(member, day, new ZeroShift(day.instrument(), detection));
            if (member.outing().thinned()) {
                member.recording().seconds(member.outing()).forEach(rows::second);
            }
            rows.write(cells);
        }
    }

    /** What of the history could not be read, blocks that the export met included. */
    public LeftOut leftOut() {
        LeftOut before = history.leftOut();
        List<LeftOut.OfOuting> outings = new ArrayList<>(before.outings());
        outings.addAll(thinned);
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
