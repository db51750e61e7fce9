package tautlog.desk.incident;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.calibration.FitQuality;
import tautlog.desk.drawing.SpanDrawings;
import tautlog.desk.page.Screen;
import tautlog.desk.page.StandingText;
import tautlog.desk.report.EntryJson;
import tautlog.desk.report.ItemLoad;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.Report;
import tautlog.rig.Band;

/** Writes an {@link Incident} as one JSON document: the facts of the page. Keys end in their unit, are added, never renamed; unknown is null. */
public final class IncidentJson {
    private final Incident incident;
    private final Screen screen;
    private final JsonFields json;
    private final EntryJson entries;

    private IncidentJson(Incident incident, Screen screen, JsonFields json) {
        this.incident = incident;
        this.screen = screen;
        this.json = json;
        entries = new EntryJson(json, incident.report().trust());
    }

    /**
     * @param screen how the sentences look; figures are newtons and UTC whatever it is
     * @param ledgerDoubts what of the ledger was not taken, sentences
     */
    public static String render(Incident incident, Screen screen, List<String> ledgerDoubts) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new IncidentJson(incident, screen, new JsonFields(writer)).document(ledgerDoubts);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private void document(List<String> ledgerDoubts) throws IOException {
        Report report = incident.report();
        json.begin();
        json.whole("schema", 1);
        json.time("at", incident.window().at());
        into();
        json.number("around_s", incident.window().aroundSeconds());
        found();
        answer();
        json.list("timeline", Timeline.of(incident, screen), event -> {
            json.time("at", event.at().utc());
            json.number("outing_s", event.at().seconds());
            json.text("kind", event.kind());
            json.text("text", event.text());
        });
        entries.findings(report);
        entries.marks(report);
        if (incident.outing().isPresent()) {
            outing(incident.outing().get());
        } else {
            json.text("outing", Optional.empty());
        }
        notes();
        entries.hookups(report);
        json.texts("blind_spots", report.blindSpots());
        json.texts("what_if", report.whatIf());
        json.texts("notes_on_recordings", report.notes());
        json.texts("ledger_doubts", ledgerDoubts);
        json.texts("standing_text", StandingText.sentences());
        report.leftOut().write(json);
        json.end();
    }

    /** In which outing and how far from its start, where no clock tells the moment; else null. */
    private void into() throws IOException {
        json.whole("at_outing", incident.window().when().inOuting());
        json.number("at_outing_s", incident.window().when().secondsInOuting());
    }

    private void found() throws IOException {
        json.begin("found");
        json.text("state", JsonReport.word(incident.found().state()));
        near("before", incident.found().before());
        near("after", incident.found().after());
        json.whole("undated_outings", incident.found().undated());
        json.end();
    }

    private void near(String key, Optional<Incident.Near> near) throws IOException {
        json.begin(key);
        json.time("at", near.flatMap(of -> of.at().utc()));
        json.number(
                "outing_s", near.map(of -> OptionalDouble.of(of.at().seconds())).orElse(OptionalDouble.empty()));
        json.text("file", near.map(Incident.Near::file));
        json.end();
    }

    private void answer() throws IOException {
        Answer answer = Answer.of(incident, screen);
        json.begin("answer");
        json.text("what_broke", answer.whatBroke());
        json.text("by_how_much", answer.byHowMuch());
        json.text("how_sure", answer.howSure());
        json.text("what_now", answer.whatNow());
        json.list("gear", List.copyOf(Answer.gear(incident).entrySet()), gear -> {
            json.text("gear", gear.getKey());
            json.text("band", gear.getValue().word());
            json.whole("count", Answer.alike(incident, gear.getKey()));
        });
        json.end();
    }

    private void outing(OutingFacts outing) throws IOException {
        json.begin("outing");
        json.text("file", outing.file());
        json.whole("outing", outing.number());
        json.text("winch", outing.winch());
        json.time("start", outing.start().utc());
        json.time("end", outing.end().utc());
        json.flag("ended", outing.isEnded());
        json.flag("thinned", outing.isThinned());
        json.number("rate_hz", outing.rateHertz());
        json.text("program", outing.program());
        json.list("hookups_on", outing.turns(), turn -> {
            json.time("from", turn.at().utc());
            json.text("hookup", turn.hookup());
            json.flag("assumed", turn.assumed());
        });
        readings(outing);
        subject(outing.subject());
        driveline(outing);
        json.flag("ledger_read", outing.isLedgerRead());
        json.list("gear", outing.gear(), this::gear);
        calibration(outing.calibration());
        integrity(outing.integrity());
        clock(outing.clock());
        json.list("comparable", outing.alike(), this::alike);
        json.list("traces", outing.traces(), trace -> trace(outing, trace));
        json.end();
    }

    private void readings(OutingFacts outing) throws IOException {
        Readings readings = outing.readings();
        json.begin("readings");
        json.whole("samples", readings.samples());
        json.number("least_n", readings.leastNewtons());
        json.number("greatest_n", readings.greatestNewtons());
        json.whole("end_stop_samples", readings.endStops());
        json.list("gaps", readings.gaps(), gap -> {
            json.number("from_s", gap.fromSeconds() - outing.at().seconds());
            json.number("to_s", gap.toSeconds() - outing.at().seconds());
            json.text("kind", JsonReport.word(gap.kind()));
        });
        json.number("supply_v", readings.health().supplyVolts());
        json.number("board_c", readings.health().celsius());
        json.end();
    }

    private void subject(Optional<Subject> subject) throws IOException {
        if (subject.isEmpty()) {
            json.text("greatest", Optional.empty());
            return;
        }
        Subject of = subject.get();
        json.begin("greatest");
        json.time("start", of.start().utc());
        json.time("end", of.end().utc());
        json.number("start_outing_s", of.start().seconds());
        json.number("end_outing_s", of.end().seconds());
        json.known("over_limit", of.overLimit());
        json.number("peak_n", of.peakNewtons());
        entries.interval("uncertainty", of.peakInterval());
        json.text("hookup", of.against().hookup());
        json.flag("hookup_assumed", of.against().assumed());
        json.number("limit_n", of.against().newtons());
        json.flag("limit_is_at_most", of.against().isAtMost());
        json.text("governing", of.against().governing());
        json.number("share", of.share());
        json.number("share_low", of.shareBounds().low());
        json.number("share_high", of.shareBounds().high());
        json.flag("at_least", of.atLeast());
        json.flag("complete", of.isComplete());
        json.list("items", of.items(), this::item);
        json.end();
    }

    private void item(ItemLoad item) throws IOException {
        entries.item(item);
        json.text("band", item.band().map(Band::word));
        json.text("band_may_be", item.bandMayBe().map(Band::word));
    }

    private void driveline(OutingFacts outing) throws IOException {
        json.begin("driveline");
        json.number("shaft_rpm", outing.readings().subject().rpm());
        json.known("clutch", outing.readings().subject().clutch());
        json.known("brake", outing.readings().subject().brake());
        Optional<DrivelineLoad> load = outing.driveline();
        json.number(
                "torque_low_nm",
                load.map(of -> OptionalDouble.of(of.leastNewtonMetres())).orElse(OptionalDouble.empty()));
        json.number(
                "torque_high_nm", load.map(DrivelineLoad::greatestNewtonMetres).orElse(OptionalDouble.empty()));
        json.flag("torque_is_at_most", load.map(DrivelineLoad::isAtMost).orElse(true));
        json.number(
                "rated_torque_nm",
                load.map(of -> OptionalDouble.of(of.ratedNewtonMetres())).orElse(OptionalDouble.empty()));
        json.number("power_high_kw", load.map(DrivelineLoad::kilowatts).orElse(OptionalDouble.empty()));
        json.end();
    }

    private void gear(GearFacts gear) throws IOException {
        json.text("gear", gear.id());
        json.text("description", gear.description());
        json.whole("count", gear.count());
        json.text("serial", gear.serial());
        json.text("wll_from", gear.workingLoadLimitFrom());
        json.text("fitted", gear.fitted().map(LocalDate::toString));
        json.text("last_inspection_rig", gear.lastInspection().map(LocalDate::toString));
        json.list("ledger", gear.ledger(), line -> {
            json.text("day", line.day());
            json.text("what", line.what());
        });
        json.text("out_of_service", gear.outOfService());
    }

    private void calibration(CalibrationFacts facts) throws IOException {
        Optional<FitQuality> quality = facts.quality();
        json.begin("calibration");
        json.flag("other", facts.isOther());
        json.text("sha256", facts.fileSha256());
        json.time("calibrated_at", facts.calibratedAt());
        json.flag("quality_known", quality.isPresent());
        json.number(
                "residual_sd_counts",
                quality.map(of -> OptionalDouble.of(of.residualSdCounts())).orElse(OptionalDouble.empty()));
        json.number(
                "least_load_n",
                quality.map(of -> OptionalDouble.of(of.leastNewtons())).orElse(OptionalDouble.empty()));
        json.number(
                "greatest_load_n",
                quality.map(of -> OptionalDouble.of(of.greatestNewtons())).orElse(OptionalDouble.empty()));
        json.number(
                "reference_percent", quality.map(FitQuality::referencePercent).orElse(OptionalDouble.empty()));
        json.end();
    }

    private void integrity(Incident.Integrity found) throws IOException {
        json.begin("integrity");
        json.flag("intact", found.intact());
        json.whole("damages", found.damages());
        json.whole("outings_lost", found.lostOutings());
        json.whole("gaps", found.gaps());
        json.text("last_link", found.lastLink());
        json.list("kept_links", found.kept(), link -> {
            json.text("kept_in", link.keptIn());
            json.text("file", link.file());
            json.text("link", link.link());
            json.flag("contradicted", link.isContradicted());
        });
        json.end();
    }

    private void clock(ClockTrust clock) throws IOException {
        json.begin("clock");
        json.whole("looks", clock.looks());
        json.whole("set_aside", clock.set());
        json.number("nearest_s", clock.nearestSeconds());
        json.number("greatest_late_s", clock.greatestLateSeconds());
        json.end();
    }

    private void alike(SeasonEvent event) throws IOException {
        json.time("at", event.at().utc());
        json.text("kind", event.kind());
        json.number("peak_n", event.peakNewtons());
        json.number("share", event.share());
        json.flag("at_least", event.atLeast());
        json.text("hookup", event.against().hookup());
        json.text("governing", event.against().governing());
    }

    private void trace(OutingFacts outing, SpanDrawings.Drawn trace) throws IOException {
        json.text("title", trace.span().title());
        json.number("from_s", trace.span().fromSeconds() - outing.at().seconds());
        json.number("to_s", trace.span().toSeconds() - outing.at().seconds());
        new TraceJson(json, trace.columns()).write();
    }

    private void notes() throws IOException {
        json.list("notes", incident.notes().notes(), note -> {
            json.time("at", Optional.of(note.at()));
            json.text("note", note.text());
            json.text("by", note.by());
        });
        json.whole("notes_unreadable", incident.notes().unreadable());
        json.whole("notes_unplaced", incident.notes().unplaced());
    }
}
