package tautlog.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tautlog.desk.page.StandingText;
import tautlog.desk.season.DayKey;
import tautlog.desk.season.DayRecord;
import tautlog.desk.season.KnownOuting;
import tautlog.desk.season.KnownSeason;
import tautlog.desk.season.Progress;
import tautlog.desk.season.SeasonWatch;
import tautlog.desk.season.Trace;
import tautlog.desk.season.WhatIf;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/** The overview: every day of every winch, what is known of it, what can be switched. */
final class SeasonJson {
    /** As the beacon shows it: {@code tautlog.detect.Beacon}. */
    private static final double CAUTION_SHARE = 0.8;

    private SeasonJson() {}

    static JsonObject of(SeasonWatch watch, Trace trace, WhatIf whatIf) {
        KnownSeason season = watch.season();
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.addProperty("zone", season.zone().getId());
        json.addProperty("caution_share", CAUTION_SHARE);
        json.addProperty("what_if", banner(whatIf));
        Set<String> hookups = new TreeSet<>();
        ForceUnit unit = watch.unit().orElse(ForceUnit.KN);
        for (KnownOuting outing : season.outings()) {
            Optional<Rig> rig = trace.rig(outing, whatIf);
            rig.ifPresent(of -> of.hookups().stream().map(Hookup::id).forEach(hookups::add));
            unit = watch.unit().orElse(rig.map(Rig::units).orElse(unit));
        }
        JsonObject shown = new JsonObject();
        shown.addProperty("symbol", unit.symbol());
        shown.addProperty("newtons", unit.newtons().doubleValue());
        json.add("unit", shown);
        json.add("offer", offer(watch, hookups));
        json.add("progress", progress(watch.progress()));
        json.add("winches", winches(season));
        JsonArray days = new JsonArray();
        season.days().forEach((day, outings) -> days.add(line(watch, day, outings, whatIf)));
        json.add("days", days);
        json.add("left_out", texts(season.leftOut().sentences()));
        json.add("notes", texts(season.notes()));
        json.add("standing", texts(StandingText.sentences()));
        return json;
    }

    /** What every view and every printed page says on top; empty for the day as it was. */
    static String banner(WhatIf whatIf) {
        List<String> parts = new ArrayList<>();
        whatIf.hookup().ifPresent(id -> parts.add("hookup " + id + " is taken to have been on all the time"));
        if (whatIf.otherRig()) {
            parts.add("another rig is used than the one recorded");
        }
        if (whatIf.otherCalibration()) {
            parts.add("another calibration is used than the one recorded");
        }
        return parts.isEmpty() ? "" : "WHAT IF: " + String.join("; ", parts) + ". This is not what was recorded.";
    }

    private static JsonObject offer(SeasonWatch watch, Set<String> hookups) {
        JsonObject offer = new JsonObject();
        offer.add("hookups", texts(List.copyOf(hookups)));
        offer.addProperty("rig", watch.offer().rig().isPresent());
        offer.addProperty("calibration", watch.offer().calibration().isPresent());
        return offer;
    }

    private static JsonArray winches(KnownSeason season) {
        JsonArray winches = new JsonArray();
        for (String winch : season.winches()) {
            JsonObject one = new JsonObject();
            one.addProperty("id", KnownSeason.winchId(winch));
            one.addProperty("name", winch);
            winches.add(one);
        }
        return winches;
    }

    private static JsonObject line(SeasonWatch watch, DayKey day, List<KnownOuting> outings, WhatIf whatIf) {
        Optional<JsonObject> known = watch.days().summary(day, whatIf);
        JsonObject line = known.map(JsonObject::deepCopy).orElseGet(JsonObject::new);
        line.addProperty("known", known.isPresent());
        span(line, day, outings);
        return line;
    }

    private static void span(JsonObject json, DayKey day, List<KnownOuting> outings) {
        json.addProperty("day", day.id());
        json.addProperty("winch_id", KnownSeason.winchId(day.winch()));
        json.addProperty("winch", day.winch());
        day.date().ifPresent(date -> json.addProperty("date", date.toString()));
        outings.stream()
                .flatMap(one -> one.start().stream())
                .min(Instant::compareTo)
                .ifPresent(at -> json.addProperty("from_us", NotesJson.micros(at)));
        outings.stream()
                .flatMap(one -> one.end().stream())
                .max(Instant::compareTo)
                .ifPresent(at -> json.addProperty("to_us", NotesJson.micros(at) + 1_000_000));
        JsonArray ids = new JsonArray();
        for (KnownOuting outing : outings) {
            JsonObject one = new JsonObject();
            one.addProperty("id", outing.id());
            one.addProperty("open", !outing.outing().closed());
            one.addProperty("has_clock", outing.hasClock());
            one.addProperty(
                    "length_s",
                    (double) (outing.outing().lastTick() - outing.outing().firstTick())
                            / outing.outing().start().instrument().tickHz());
            ids.add(one);
        }
        json.add("outings", ids);
    }

    static JsonObject day(KnownSeason season, DayKey day, Optional<DayRecord> record, WhatIf whatIf) {
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.addProperty("known", record.isPresent());
        json.addProperty("what_if", banner(whatIf));
        span(json, day, Map.copyOf(season.days()).getOrDefault(day, List.of()));
        record.ifPresent(of -> {
            json.add("summary", of.summary());
            json.add("report", of.report());
            json.add("page", of.page());
        });
        return json;
    }

    static JsonObject progress(Progress progress) {
        JsonObject json = new JsonObject();
        json.addProperty("looked", progress.looked());
        json.addProperty("outings", progress.outings());
        json.addProperty("outings_read", progress.outingsRead());
        json.addProperty("days", progress.days());
        json.addProperty("days_known", progress.daysKnown());
        json.addProperty("trouble", progress.trouble());
        json.addProperty("done", progress.isDone());
        return json;
    }

    private static JsonArray texts(List<String> texts) {
        JsonArray array = new JsonArray();
        texts.forEach(array::add);
        return array;
    }
}
