package tautlog.desk.report;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Cause;
import tautlog.desk.uncertainty.Interval;
import tautlog.detect.Known;
import tautlog.rig.Band;

/** Writes a {@link Report} as one JSON document. Keys end in their unit, are added, never renamed; unknown is null. */
public final class JsonReport {
    /** Keys of the load bands, in the order of {@link Report.Hours#bandHours}. */
    public static final List<String> BAND_KEYS = List.of("to_0.25", "to_0.5", "to_0.75", "to_1", "above_1");

    private final JsonFields json;
    private final Report.Trust trust;

    private JsonReport(JsonFields json, Report.Trust trust) {
        this.json = json;
        this.trust = trust;
    }

    /** @param gearOut empty when no ledger was read, or the report tells of another day than it was */
    public static String render(Report report, Optional<List<GearOut>> gearOut) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new JsonReport(new JsonFields(writer), report.trust()).report(report, gearOut);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private void report(Report report, Optional<List<GearOut>> gearOut) throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.list("recordings", report.recordings(), this::source);
        json.list("hookups", report.hookups(), this::hookup);
        json.list("pulls", report.pulls(), this::pull);
        json.list("overloads", report.overloads(), this::overload);
        json.list("shocks", report.shocks(), this::shock);
        json.list("jolts", report.jolts(), this::jolt);
        json.list("drops", report.drops(), this::drop);
        json.list("stalls", report.stalls(), this::stall);
        json.list("trouble", report.trouble(), this::trouble);
        hours(report);
        trust();
        json.list("marks", report.marks(), this::mark);
        json.texts("what_if", report.whatIf());
        json.texts("notes", report.notes());
        if (gearOut.isPresent()) {
            json.list("gear_out_of_service", gearOut.get(), this::gearOut);
        } else {
            json.text("gear_out_of_service", Optional.empty());
        }
        report.leftOut().write(json);
        json.end();
    }

    private void gearOut(GearOut out) throws IOException {
        json.text("winch", out.winch());
        json.text("gear", out.gear());
        json.text("piece", out.piece());
        json.whole("count", out.count());
        json.text("standing", out.standing());
        json.text("worst", out.worst().map(Band::word));
        json.whole("overloads", out.overloads());
        json.texts("reasons", out.reasons());
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

    private void hookup(Report.HookupInForce hookup) throws IOException {
        json.text("id", hookup.id());
        json.number("limit_n", hookup.limitNewtons());
        json.flag("limit_is_at_most", hookup.limitIsAtMost());
        json.text("governing", hookup.governing());
        json.flag("assumed", hookup.assumed());
        json.texts("assumptions", hookup.assumptions());
    }

    private void pull(Entry.Pull pull) throws IOException {
        span(pull);
        json.number("duration_s", pull.durationSeconds());
        json.number("peak_n", pull.peakNewtons());
        json.number("mean_n", pull.meanNewtons());
        json.number("impulse_ns", pull.impulseNewtonSeconds());
        json.text("hookup", pull.against().hookup());
        json.number("limit_n", pull.against().newtons());
        json.number("share", pull.share());
        json.whole("overloads", pull.overloads());
        json.whole("shocks", pull.shocks());
        json.known("held", pull.held());
        json.flag("has_gap", pull.hasGap());
        json.flag("cut_by_gap", pull.cutByGap());
        json.flag("cut_by_end", pull.cutByEnd());
        json.flag("limit_is_at_most", pull.against().isAtMost());
        json.flag("hookup_assumed", pull.against().assumed());
        json.flag("at_least", pull.atLeast());
        interval("uncertainty", pull.peakInterval(), pull.shareBounds());
        interval("mean_uncertainty", pull.meanInterval());
        bounds("impulse_uncertainty", "_ns", pull.impulseBounds());
        json.known("may_be_over", pull.overLimit());
        position(pull.start());
        json.flag("from_said_live", trust.isFromSaidLive(pull.start()));
    }

    /** Where the true force lies; an end that is not known is null. */
    private void interval(String key, Interval interval) throws IOException {
        json.begin(key);
        ends(interval);
        json.end();
    }

    /** The same, and what share of the limit the ends are. */
    private void interval(String key, Interval interval, Bounds share) throws IOException {
        json.begin(key);
        ends(interval);
        share(share);
        json.end();
    }

    private void share(Bounds share) throws IOException {
        json.number("share_low", share.low());
        json.number("share_high", share.high());
    }

    /** The same of a figure that is no force; {@code unit} ends the keys of its ends. */
    private void bounds(String key, String unit, Bounds bounds) throws IOException {
        json.begin(key);
        json.number("low" + unit, bounds.low());
        json.number("high" + unit, bounds.high());
        belongings(bounds.largest(), bounds.leavesOut());
        json.end();
    }

    private void ends(Interval interval) throws IOException {
        json.number("low_n", interval.lowNewtons());
        json.number("high_n", interval.highNewtons());
        belongings(interval.largest(), interval.leavesOut());
    }

    private void belongings(Optional<Cause> largest, List<String> leavesOut) throws IOException {
        json.number("coverage", Interval.COVERAGE);
        json.text("largest", largest.map(Cause::word));
        json.texts("leaves_out", leavesOut);
    }

    private void overload(Entry.Overload overload) throws IOException {
        span(overload);
        json.number("above_s", overload.aboveSeconds());
        json.number("peak_n", overload.peakNewtons());
        json.number("limit_n", overload.against().newtons());
        json.flag("limit_is_at_most", overload.against().isAtMost());
        json.number("share", overload.share());
        json.text("governing", overload.against().governing());
        json.text("band", overload.band().word());
        json.flag("at_least", overload.atLeast());
        json.flag("has_gap", overload.hasGap());
        json.flag("cut_by_gap", overload.cutByGap());
        json.flag("cut_by_end", overload.cutByEnd());
        json.list("items", overload.items(), this::item);
        json.text("hookup", overload.against().hookup());
        json.flag("hookup_assumed", overload.against().assumed());
        interval("uncertainty", overload.peakInterval(), overload.shareBounds());
        json.text("band_may_be", overload.bandMayBe().map(Band::word));
        position(overload.start());
    }

    private void item(ItemLoad item) throws IOException {
        json.text("gear", item.gear());
        json.number("load_n", item.loadNewtons());
        json.number("allowed_n", item.allowedNewtons());
        json.number("proof_n", item.proofNewtons());
        json.number("breaking_n", item.breakingNewtons());
        json.number("share", item.share());
        json.flag("allowed_is_at_most", item.allowedIsAtMost());
        json.number("load_low_n", item.load().lowNewtons());
        json.number("load_high_n", item.load().highNewtons());
        share(item.shareBounds());
    }

    private void shock(Entry.Shock shock) throws IOException {
        json.time("at", shock.at().utc());
        json.number("slack_s", shock.slackSeconds());
        json.number("rise_s", shock.riseSeconds());
        json.number("rise_n_per_s", shock.riseNewtonsPerSecond());
        json.number("peak_n", shock.peakNewtons());
        json.number("peak_if_half_sine_n", shock.peakIfHalfSineNewtons());
        json.flag("resolved", shock.resolved());
        json.number("settled_n", shock.settledNewtons());
        json.number("factor", shock.factor());
        json.number("share", shock.share());
        json.flag("has_gap", shock.hasGap());
        against(shock.against());
        json.flag("at_least", shock.atLeast());
        interval("uncertainty", shock.peakInterval(), shock.shareBounds());
        bounds("rise_rate_uncertainty", "_n_per_s", shock.riseRateBounds());
        interval("settled_uncertainty", shock.settledInterval());
        bounds("factor_uncertainty", "", shock.factorBounds());
        position(shock.at());
    }

    private void jolt(Entry.Jolt jolt) throws IOException {
        json.time("start", jolt.start().utc());
        json.time("at", jolt.at().utc());
        json.number("peak_n", jolt.peakNewtons());
        json.number("rise_n", jolt.riseNewtons());
        json.number("rise_s", jolt.riseSeconds());
        json.number("share", jolt.share());
        against(jolt.against());
        json.flag("at_least", jolt.atLeast());
        interval("uncertainty", jolt.peakInterval(), jolt.shareBounds());
        interval("rise_uncertainty", jolt.riseInterval());
        json.flag("resolved", jolt.resolved());
        position(jolt.at());
    }

    private void against(Entry.Against against) throws IOException {
        json.text("hookup", against.hookup());
        json.number("limit_n", against.newtons());
        json.flag("limit_is_at_most", against.isAtMost());
    }

    private void drop(Entry.Drop drop) throws IOException {
        json.time("start", drop.start().utc());
        json.number("before_n", drop.beforeNewtons());
        json.number("after_n", drop.afterNewtons());
        json.number("fall_s", drop.fallSeconds());
        json.known("stays_slack", drop.staysSlack());
        json.text("shaft", word(drop.shaft()));
        json.known("clutch", drop.clutch());
        json.known("brake", drop.brake());
        interval("before_uncertainty", drop.beforeInterval());
        interval("after_uncertainty", drop.afterInterval());
        position(drop.start());
    }

    private void stall(Entry.Stall stall) throws IOException {
        span(stall);
        json.text("ended", word(stall.ended()));
        json.number("least_rpm", stall.leastRpm());
        json.number("before_rpm", stall.beforeRpm());
        json.number("tension_n", stall.tensionNewtons());
        interval("tension_uncertainty", stall.tensionInterval());
        position(stall.start());
    }

    private void trouble(Entry.Trouble trouble) throws IOException {
        span(trouble);
        json.text("kind", word(trouble.trouble()));
        position(trouble.start());
    }

    private void mark(Report.Mark mark) throws IOException {
        json.time("at", mark.at().utc());
        json.text("note", mark.note());
    }

    /** Where the winch was; null when no receiver told it in the 10 s before. */
    private void position(Moment at) throws IOException {
        if (at.place().isEmpty()) {
            json.text("position", Optional.empty());
            return;
        }
        Place place = at.place().get();
        json.begin("position");
        json.number("lat_deg", place.latitudeDegrees());
        json.number("lon_deg", place.longitudeDegrees());
        json.number("age_s", place.ageSeconds());
        json.end();
    }

    private void span(Entry entry) throws IOException {
        json.time("start", entry.start().utc());
        json.time("end", entry.end().utc());
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
