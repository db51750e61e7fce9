package tautlog.desk.hours;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.LeftOut;
import tautlog.rig.Opening;

/**
 * Meters for programs; unknown is null.
 *
 * <pre>
 *   { "schema": 1, "outings": [ ROW ], "days": [ ROW ], "months": [ ROW ], "seasons": [ ROW ], "total": ROW,
 *     "opening": METER, "unlogged": METER, "meter": METER, "ledger_doubts": [ … ], "recordings_left_out": [ … ], "outings_left_out": [ … ] }
 *   ROW: name, start, end, shaft_h, pull_h, winching_h, held_h, joint_h, joint_h_is_at_most, band_h, pulls, overloads, …, from_said_live,
 *        logged_h, gap_h, no_shaft_h (time for which no shaft reading speaks)
 *   METER: shaft_h, pull_h, pulls; of what a ledger tells, and of meters with that, also entries, shaft_h_is_at_least, …
 * </pre>
 */
public final class HoursJson {
    private static final List<String> KINDS = List.of("pull", "overload", "shock", "jolt", "drop", "stall");

    private final JsonFields json;

    private HoursJson(JsonFields json) {
        this.json = json;
    }

    /**
     * The document.
     *
     * @param doubts what of the ledger was not read or counts for no winch here, whole sentences
     * @param leftOut what could not be read and is in no figure
     */
    public static String render(HoursTable table, List<String> doubts, LeftOut leftOut) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new HoursJson(new JsonFields(writer)).table(table, doubts, leftOut);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private void table(HoursTable table, List<String> doubts, LeftOut leftOut) throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.list("outings", table.outings(), this::row);
        json.list("days", table.days(), this::row);
        json.list("months", table.rows(Period.MONTH), this::row);
        json.list("seasons", table.rows(Period.SEASON), this::row);
        json.begin("total");
        row(table.total());
        json.end();
        meters(table);
        json.texts("ledger_doubts", doubts);
        leftOut.write(json);
        json.end();
    }

    private void row(Row row) throws IOException {
        json.text("name", row.name());
        json.time("start", row.start());
        json.time("end", row.end());
        JsonReport.hours(json, row.hours());
        for (String kind : KINDS) {
            json.whole(kind + "s", row.count(kind));
        }
        json.flag("from_said_live", row.fromSaidLive());
        json.number("logged_h", row.coverage().logged().hours());
        json.number("gap_h", row.coverage().gaps().hours());
        json.number("no_shaft_h", row.coverage().withoutShaft().hours());
    }

    /** What was before the first recording, and with it all that is known; the first is null for several winches. */
    private void meters(HoursTable table) throws IOException {
        Opening opening = table.opening().orElse(Opening.NONE);
        double openingShaft = opening.shaftHours().doubleValue();
        double openingPull = opening.pullHours().doubleValue();
        OptionalDouble shaft = table.total().hours().shaftHours();
        boolean isKnown = table.opening().isPresent();
        json.begin("opening");
        json.number("shaft_h", isKnown ? openingShaft : Double.NaN);
        json.number("pull_h", isKnown ? openingPull : Double.NaN);
        json.whole("pulls", isKnown ? OptionalLong.of(opening.pulls()) : OptionalLong.empty());
        json.end();
        Unlogged unlogged = table.unlogged();
        json.begin("unlogged");
        json.whole("entries", unlogged.entries());
        json.number("shaft_h", unlogged.shaftHours().known().doubleValue());
        json.number("pull_h", unlogged.pullHours().known().doubleValue());
        json.number("pulls", unlogged.pulls().known().doubleValue());
        atLeast(
                unlogged.shaftHours().isAtLeast(),
                unlogged.pullHours().isAtLeast(),
                unlogged.pulls().isAtLeast());
        json.end();
        double unloggedShaft = unlogged.shaftHours().known().doubleValue();
        json.begin("meter");
        json.number(
                "shaft_h",
                shaft.isPresent() ? OptionalDouble.of(openingShaft + unloggedShaft + shaft.getAsDouble()) : shaft);
        json.number(
                "pull_h",
                openingPull
                        + unlogged.pullHours().known().doubleValue()
                        + table.total().hours().pullHours());
        json.whole(
                "pulls",
                opening.pulls()
                        + unlogged.pulls().known().longValue()
                        + table.total().count("pull"));
        atLeast(
                unlogged.shaftHours().isAtLeast() || table.total().meters().shaftIsAtLeast(),
                unlogged.pullHours().isAtLeast(),
                unlogged.pulls().isAtLeast());
        json.end();
    }

    private void atLeast(boolean shaft, boolean pull, boolean pulls) throws IOException {
        json.flag("shaft_h_is_at_least", shaft);
        json.flag("pull_h_is_at_least", pull);
        json.flag("pulls_is_at_least", pulls);
    }
}
