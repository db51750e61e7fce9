package tautlog.desk.season;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Question;
import tautlog.desk.analysis.QuestionException;
import tautlog.desk.page.Document;
import tautlog.desk.page.Drawings;
import tautlog.desk.page.OverloadedGear;
import tautlog.desk.page.ReportPage;
import tautlog.desk.page.Screen;
import tautlog.desk.report.JsonReport;
import tautlog.quantity.ForceUnit;
import tautlog.recording.RecordingException;

/** Lets the analysis say what it finds on a day. */
final class DayWork {
    private final Path folder;
    private final ZoneId zone;
    private final Optional<ForceUnit> unit;

    /** @param unit of forces; empty for the rig's */
    DayWork(Path folder, ZoneId zone, Optional<ForceUnit> unit) {
        this.folder = folder;
        this.zone = zone;
        this.unit = unit;
    }

    Optional<ForceUnit> unit() {
        return unit;
    }

    /** What a day's figures depend on beside the recordings. */
    String shape() {
        return Fingerprint.of("3", zone.getId(), unit.map(ForceUnit::symbol).orElse("rig"));
    }

    /** The day's record; one that says why when nothing can be worked out. */
    DayRecord record(DayKey day, List<KnownOuting> outings, Question question, String stamp) throws IOException {
        List<Path> files = outings.stream().map(KnownOuting::file).distinct().toList();
        try (History history = History.open(files)) {
            List<History.Member> members = history.members().stream()
                    .filter(member -> outings.stream().anyMatch(one -> one.is(member)))
                    .toList();
            Analysis analysis = Analysis.of(history, members, question);
            return record(day, analysis, stamp);
        } catch (QuestionException | RecordingException e) {
            return failed(day, stamp, WithoutFolder.text(folder, String.valueOf(e.getMessage())));
        }
    }

    private DayRecord record(DayKey day, Analysis analysis, String stamp) {
        ForceUnit shown = unit.orElseGet(() -> analysis.studies().isEmpty()
                ? ForceUnit.KN
                : analysis.studies().get(0).rig().units());
        Screen screen = Screen.of(analysis.report(), shown, zone);
        JsonObject report = JsonParser.parseString(JsonReport.render(analysis.report(), Optional.empty(), List.of()))
                .getAsJsonObject();
        JsonObject page = PageJson.of(
                ReportPage.of(analysis.report(), screen, Drawings.NONE, ReportPage.Extent.EVERYTHING, gear(analysis)));
        JsonObject summary = DaySummary.of(day, analysis.report(), screen);
        return new DayRecord(
                stamp,
                summary,
                WithoutFolder.json(folder, report).getAsJsonObject(),
                WithoutFolder.json(folder, page).getAsJsonObject());
    }

    /** No ledger is read here. */
    private static Document.Section gear(Analysis analysis) {
        return analysis.report().whatIf().isEmpty() ? OverloadedGear.withoutLedger() : OverloadedGear.whatIf();
    }

    private static DayRecord failed(DayKey day, String stamp, String why) {
        JsonObject summary = DaySummary.named(day);
        summary.addProperty("failed", why);
        return new DayRecord(stamp, summary, new JsonObject(), new JsonObject());
    }
}
