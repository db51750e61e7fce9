package tautlog.desk.report;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Cause;
import tautlog.desk.uncertainty.Interval;
import tautlog.rig.Band;

/** The keys of findings, the same in every document that holds some. Definitions: {@code analyzer/FINDINGS.md}. */
public final class EntryJson {
    private final JsonFields json;
    private final Report.Trust trust;

    /** @param trust says which figures are those said live */
    public EntryJson(JsonFields json, Report.Trust trust) {
        this.json = json;
        this.trust = trust;
    }

    /** The limits that tensions were compared with, into the object that is open. */
    public void hookups(Report report) throws IOException {
        json.list("hookups", report.hookups(), this::hookup);
        hookupsNotKnown(report);
    }

    /** All findings, a list for each kind, into the object that is open. */
    public void findings(Report report) throws IOException {
        json.list("pulls", report.pulls(), this::pull);
        json.list("overloads", report.overloads(), this::overload);
        json.list("shocks", report.shocks(), this::shock);
        json.list("jolts", report.jolts(), this::jolt);
        json.list("drops", report.drops(), this::drop);
        json.list("stalls", report.stalls(), this::stall);
        json.list("trouble", report.trouble(), this::trouble);
    }

    private void hookupsNotKnown(Report report) throws IOException {
        json.list("hookups_not_known", report.hookupsNotKnown(), stretch -> {
            json.time("start", stretch.start().utc());
            json.time("end", stretch.end().utc());
            inOuting(stretch.start());
            json.number("outing_end_s", stretch.end().seconds());
            json.text("taken", stretch.taken());
        });
    }

    /** Notes that people left. */
    public void marks(Report report) throws IOException {
        json.list("marks", report.marks(), this::mark);
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
    public void interval(String key, Interval interval) throws IOException {
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

    /** What an item carried, into the object that is open. */
    public void item(ItemLoad item) throws IOException {
        json.text("gear", item.gear());
        json.whole("count", item.alike());
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
        json.text("shaft", JsonReport.word(drop.shaft()));
        json.known("clutch", drop.clutch());
        json.known("brake", drop.brake());
        interval("before_uncertainty", drop.beforeInterval());
        interval("after_uncertainty", drop.afterInterval());
        position(drop.start());
    }

    private void stall(Entry.Stall stall) throws IOException {
        span(stall);
        json.text("ended", JsonReport.word(stall.ended()));
        json.number("least_rpm", stall.leastRpm());
        json.number("before_rpm", stall.beforeRpm());
        json.number("tension_n", stall.tensionNewtons());
        interval("tension_uncertainty", stall.tensionInterval());
        position(stall.start());
    }

    private void trouble(Entry.Trouble trouble) throws IOException {
        span(trouble);
        json.text("kind", JsonReport.word(trouble.trouble()));
        position(trouble.start());
    }

    private void mark(Report.Mark mark) throws IOException {
        json.time("at", mark.at().utc());
        json.text("note", mark.note());
        inOuting(mark.at());
    }

    private void inOuting(Moment at) throws IOException {
        json.whole("outing", at.outing());
        json.number("outing_s", at.seconds());
    }

    /** When in its outing, which an outing without a clock has, too; where the winch was, null when no receiver told it in the 10 s before. */
    private void position(Moment at) throws IOException {
        inOuting(at);
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
        json.number("outing_end_s", entry.end().seconds());
    }
}
