package tautlog.desk.hours;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.LeftOut;

/**
 * Meters for programs; unknown is null.
 *
 * <pre>
 *   { "schema": 1, "outings": [ ROW ], "days": [ ROW ], "total": ROW,
 *     "opening": METER, "meter": METER, "recordings_left_out": [ … ], "outings_left_out": [ … ] }
 *   ROW: name, start, end, shaft_h, pull_h, winching_h, held_h, joint_h, joint_h_is_at_most, band_h, pulls, overloads, …
 *   METER: shaft_h, pull_h, pulls
 * </pre>
 */
public final class HoursJson {
    private static final List<String> KINDS = List.of("pull", "overload", "shock", "jolt", "drop", "stall");

    private final JsonFields json;

    private HoursJson(JsonFields json) {
        this.json = json;
    }

    /** @param leftOut what could not be read and is in no figure */
    public static String render(HoursTable table, LeftOut leftOut) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new HoursJson(new JsonFields(writer)).table(table, leftOut);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private void table(HoursTable table, LeftOut leftOut) throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.list("outings", table.outings(), this::row);
        json.list("days", table.days(), this::row);
        json.begin("total");
        row(table.total());
        json.end();
        double openingShaft = table.opening().shaftHours().doubleValue();
        double openingPull = table.opening().pullHours().doubleValue();
        OptionalDouble shaft = table.total().hours().shaftHours();
        meter(
                "opening",
                OptionalDouble.of(openingShaft),
                openingPull,
                table.opening().pulls());
        meter(
                "meter",
                shaft.isPresent() ? OptionalDouble.of(openingShaft + shaft.getAsDouble()) : shaft,
                openingPull + table.total().hours().pullHours(),
                table.opening().pulls() + table.total().count("pull"));
        leftOut.write(json);
        json.end();
    }

    private void row(HoursTable.Row row) throws IOException {
        json.text("name", row.name());
        json.time("start", row.start());
        json.time("end", row.end());
        JsonReport.hours(json, row.hours());
        for (String kind : KINDS) {
            json.whole(kind + "s", row.count(kind));
        }
    }

    private void meter(String key, OptionalDouble shaftHours, double pullHours, long pulls) throws IOException {
        json.begin(key);
        json.number("shaft_h", shaftHours);
        json.number("pull_h", pullHours);
        json.whole("pulls", pulls);
        json.end();
    }
}
