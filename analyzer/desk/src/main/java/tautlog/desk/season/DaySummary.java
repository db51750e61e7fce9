package tautlog.desk.season;

import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import tautlog.desk.page.Screen;
import tautlog.desk.report.Entry;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;

/** A line of the season's overview: figures of a day's report, and those that a person reads as words. */
final class DaySummary {
    private DaySummary() {}

    static JsonObject named(DayKey day) {
        JsonObject json = new JsonObject();
        json.addProperty("day", day.id());
        json.addProperty("winch", day.winch());
        text(json, "date", day.date().map(Object::toString));
        return json;
    }

    static JsonObject of(DayKey day, Report report, Screen screen) {
        JsonObject json = named(day);
        time(
                json,
                "start",
                report.recordings().stream()
                        .flatMap(source -> source.start().stream())
                        .min(Comparator.naturalOrder()));
        time(
                json,
                "end",
                report.recordings().stream()
                        .flatMap(source -> source.end().stream())
                        .max(Comparator.naturalOrder()));
        json.addProperty("pulls", report.pulls().size());
        json.addProperty("overloads", report.overloads().size());
        json.addProperty("shocks", report.shocks().size());
        json.addProperty("jolts", report.jolts().size());
        json.addProperty("drops", report.drops().size());
        json.addProperty("stalls", report.stalls().size());
        greatest(json, report, screen);
        json.addProperty("pull_h", report.hours().pullHours());
        number(json, "shaft_h", report.hours().shaftHours());
        json.addProperty("gaps", report.trust().gaps());
        json.addProperty("gap_s", report.trust().gapSeconds());
        json.addProperty("thinned_outings", report.trust().thinned().size());
        json.addProperty(
                "left_out",
                report.leftOut().sentences().size() + report.leftOut().damage().size());
        json.add(
                "chain_intact",
                report.trust()
                        .chainIntact()
                        .map(yes -> (com.google.gson.JsonElement) new com.google.gson.JsonPrimitive(yes))
                        .orElse(JsonNull.INSTANCE));
        JsonArray hookups = new JsonArray();
        report.hookups().forEach(hookup -> hookups.add(hookup.id()));
        json.add("hookups", hookups);
        json.addProperty("unit", screen.unit().symbol());
        JsonArray whatIf = new JsonArray();
        report.whatIf().forEach(whatIf::add);
        json.add("what_if", whatIf);
        return json;
    }

    /** Of all pulls; the share counts, not the force: another limit may have been in force. */
    private static void greatest(JsonObject json, Report report, Screen screen) {
        Optional<Entry.Pull> worst = report.pulls().stream().max(Comparator.comparingDouble(Entry.Pull::share));
        number(
                json,
                "greatest_share",
                worst.map(pull -> OptionalDouble.of(pull.share())).orElseGet(OptionalDouble::empty));
        text(json, "greatest_share_text", worst.map(pull -> Screen.percent(pull.share())));
        json.addProperty(
                "greatest_is_at_least",
                worst.map(pull -> isLowerBound(pull, report)).orElse(false));
        json.addProperty(
                "may_be_over",
                report.pulls().stream().filter(Entry.Pull::mayBeOver).count());
        Stream<Double> peaks = report.pulls().stream().map(Entry.Pull::peakNewtons);
        text(json, "greatest_force_text", peaks.max(Comparator.naturalOrder()).map(screen::force));
    }

    /** Whether its share may be more than it says. */
    private static boolean isLowerBound(Entry.Pull pull, Report report) {
        boolean noUpperEnd = pull.shareBounds().low().isPresent()
                && pull.shareBounds().high().isEmpty();
        return pull.atLeast()
                || pull.against().isAtMost()
                || noUpperEnd
                || report.shocks().stream().anyMatch(shock -> !shock.resolved() && isIn(shock.at(), pull))
                || report.jolts().stream().anyMatch(jolt -> !jolt.resolved() && isIn(jolt.at(), pull));
    }

    private static boolean isIn(Moment at, Entry.Pull pull) {
        return at.compareTo(pull.start()) >= 0 && at.compareTo(pull.end()) <= 0;
    }

    private static void time(JsonObject json, String key, Optional<Instant> at) {
        text(json, key, at.map(JsonFields::time));
    }

    private static void text(JsonObject json, String key, Optional<String> value) {
        json.add(key, value.isPresent() ? new com.google.gson.JsonPrimitive(value.get()) : JsonNull.INSTANCE);
    }

    private static void number(JsonObject json, String key, OptionalDouble value) {
        json.add(key, value.isPresent() ? new com.google.gson.JsonPrimitive(value.getAsDouble()) : JsonNull.INSTANCE);
    }
}
