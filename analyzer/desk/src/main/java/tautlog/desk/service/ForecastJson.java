package tautlog.desk.service;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import tautlog.config.Reading;
import tautlog.desk.report.JsonFields;

/**
 * When tasks will be due, for programs; unknown is null.
 *
 * <pre>
 *   { "schema": 1, "as_of", "tasks": [ { winch, task, standing, earliest, expected, latest (local days), basis: [ … ] } ], "ledger_lines": [ … ], "notes": [ … ] }
 * </pre>
 */
public final class ForecastJson {
    private ForecastJson() {}

    public static String render(ServiceState state) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            JsonFields json = new JsonFields(writer);
            json.begin();
            json.whole("schema", 1);
            json.time("as_of", Optional.of(state.asOf()));
            json.list("tasks", Forecaster.of(state), forecast -> task(json, forecast));
            ServiceJson.ledgerLines(json, state.ledger());
            json.texts("notes", state.notes());
            state.leftOut().write(json);
            json.end();
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private static void task(JsonFields json, TaskForecast forecast) throws IOException {
        json.text("winch", forecast.state().winch());
        json.text("task", forecast.state().task().id());
        json.text("standing", Reading.word(forecast.state().standing()));
        day(json, "earliest", forecast, Outlook::earliest);
        day(json, "expected", forecast, Outlook::expected);
        day(json, "latest", forecast, Outlook::latest);
        json.texts("basis", forecast.basis());
    }

    private static void day(
            JsonFields json, String key, TaskForecast forecast, Function<Outlook, Optional<LocalDate>> end)
            throws IOException {
        json.text(key, forecast.outlook().flatMap(end).map(LocalDate::toString));
    }
}
