package tautlog.desk.report;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tautlog.detect.Known;

/** Writes a {@link Report} as one JSON document. Keys end in their unit, are added, never renamed; unknown is null. */
public final class JsonReport {
    /** Keys of the load bands, in the order of {@link Report.Hours#bandHours}. */
    public static final List<String> BAND_KEYS = List.of("to_0.25", "to_0.5", "to_0.75", "to_1", "above_1");

    private final JsonFields json;
    private final EntryJson entries;
    private final Report.Trust trust;

    private JsonReport(JsonFields json, Report.Trust trust) {
        this.json = json;
        entries = new EntryJson(json, trust);
        this.trust = trust;
    }

    /**
     * The document.
     *
     * @param gearOut empty when no ledger was read, or the report tells of another day than it was
     * @param doubts what of the ledger was not read or counts for no winch here, whole sentences
     */
    public static String render(Report report, Optional<List<GearOut>> gearOut, List<String> doubts) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new JsonReport(new JsonFields(writer), report.trust()).report(report, gearOut, doubts);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private void report(Report report, Optional<List<GearOut>> gearOut, List<String> doubts) throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.list("recordings", report.recordings(), this::source);
        entries.hookups(report);
        entries.findings(report);
        hours(report);
        trust();
        entries.marks(report);
        json.texts("what_if", report.whatIf());
        json.texts("notes", report.notes());
        if (gearOut.isPresent()) {
            json.list("gear_out_of_service", gearOut.get(), out -> out.write(json));
        } else {
            json.text("gear_out_of_service", Optional.empty());
        }
        json.texts("ledger_doubts", doubts);
        report.leftOut().write(json);
        json.end();
    }

    private void source(Report.Source source) throws IOException {
        json.text("file", source.file());
        json.text("winch", source.winch());
        json.time("start", source.start());
        json.time("end", source.end());
        json.whole("samples", source.samples());
        json.number("rate_hz", source.rateHertz());
        json.whole("outings", source.outings());
        json.flag("imported", source.imported());
    }

    private void hours(Report report) throws IOException {
        json.begin("hours");
        hours(json, report.hours());
        json.whole("pulls", report.pulls().size());
        json.whole("overloads", report.overloads().size());
        json.whole("shocks", report.shocks().size());
        json.whole("jolts", report.jolts().size());
        json.whole("drops", report.drops().size());
        json.whole("stalls", report.stalls().size());
        json.end();
    }

    /** The meters and bands into the object that is open. */
    public static void hours(JsonFields json, Report.Hours hours) throws IOException {
        json.number("shaft_h", hours.shaftHours());
        json.number("pull_h", hours.pullHours());
        json.number("winching_h", hours.winchingHours());
        json.number("held_h", hours.heldHours());
        json.number("joint_h", hours.jointHours());
        json.flag("joint_h_is_at_most", hours.jointIsAtMost());
        if (hours.shaftIsAtLeast()) {
            json.flag("shaft_h_is_at_least", true);
            json.flag("winching_h_is_at_least", true);
            json.flag("held_h_is_at_least", true);
        }
        json.begin("band_h");
        for (int i = 0; i < BAND_KEYS.size(); i++) {
            json.number(BAND_KEYS.get(i), hours.bandHours().get(i));
        }
        json.end();
    }

    private void trust() throws IOException {
        json.begin("trust");
        json.whole("gaps", trust.gaps());
        json.number("gap_s", trust.gapSeconds());
        json.whole("end_stop_samples", trust.endStopSamples());
        json.whole("rejected_frames", trust.rejectedFrames());
        json.begin("rejected");
        for (Map.Entry<String, Long> kind : trust.rejected().entrySet()) {
            json.whole(kind.getKey(), kind.getValue());
        }
        json.end();
        json.whole("lost_frames", trust.lostFrames());
        json.whole("lost_by_instrument", trust.lostByInstrument());
        json.known("chain_intact", trust.chainIntact().map(JsonReport::known).orElse(Known.UNKNOWN));
        json.text("last_link", trust.lastLink());
        json.time("calibrated_at", trust.calibratedAt());
        json.known(
                "live_findings_agree",
                trust.liveFindingsAgree().map(JsonReport::known).orElse(Known.UNKNOWN));
        json.whole("held_frames", trust.heldFrames());
        json.whole("repeated_frames", trust.repeatedFrames());
        json.begin("zero");
        json.flag("proven", trust.zero().proven());
        json.whole("unproven_outings", trust.zero().unproven());
        json.whole("moves", trust.zero().moves());
        json.number("greatest_shift_n", trust.zero().greatestShiftNewtons());
        json.end();
        json.list("thinned", trust.thinned(), outing -> {
            json.text("file", outing.file());
            json.whole("outing", outing.outing());
            json.whole("samples", outing.samples());
        });
        json.end();
    }

    private static Known known(boolean yes) {
        return yes ? Known.YES : Known.NO;
    }

    /** {@code KEPT_TURNING} as {@code kept-turning}. */
    public static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
