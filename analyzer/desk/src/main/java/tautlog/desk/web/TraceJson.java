package tautlog.desk.web;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import tautlog.desk.pyramid.Band;
import tautlog.desk.report.JsonFields;
import tautlog.desk.season.TraceView;

/** A trace as columns: arrays as long as there are columns that say something. Times end in {@code _us}, microseconds. */
final class TraceJson {
    private final JsonWriter out;
    private final JsonFields json;

    private TraceJson(JsonWriter out) {
        this.out = out;
        json = new JsonFields(out);
    }

    static String of(TraceView view) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = new JsonWriter(text)) {
            writer.setSerializeNulls(true);
            writer.setHtmlSafe(true);
            new TraceJson(writer).write(view);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.toString();
    }

    private void write(TraceView view) throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.whole("from_us", view.tension().from());
        json.whole("to_us", view.tension().to());
        json.flag("from_samples", view.fromSamples());
        band("tension", "_n", view.tension());
        band("shaft", "_rpm", view.shaft());
        json.list("limits", view.steps(), step -> {
            json.whole("from_us", step.from());
            json.whole("to_us", step.to());
            json.text("hookup", step.hookup());
            json.number("limit_n", step.limitNewtons());
            json.flag("limit_is_at_most", step.atMost());
            json.text("governing", step.governing());
            json.flag("assumed", step.assumed());
            json.number("at_least_from_n", step.atLeastFromNewtons());
        });
        json.list("marks", view.marks(), mark -> {
            json.whole("at_us", mark.at());
            json.text("note", mark.note());
        });
        json.list("outings", view.outings(), part -> {
            json.text("id", part.id());
            json.whole("from_us", part.from());
            json.whole("to_us", part.to());
            json.text("state", part.state().name().toLowerCase(Locale.ROOT).replace('_', '-'));
            json.flag("open", part.open());
            json.text("why", part.why());
        });
        json.end();
    }

    private void band(String key, String unit, Band band) throws IOException {
        json.begin(key);
        longs("from_us", band, Band::begin);
        longs("to_us", band, Band::end);
        longs("samples", band, Band::samples);
        doubles("least" + unit, band, Band::least);
        doubles("greatest" + unit, band, Band::greatest);
        missing("missing_from_us", band, Band::missingFrom);
        missing("missing_to_us", band, Band::missingTo);
        json.end();
    }

    private interface Whole {
        long of(Band band, int column);
    }

    private interface Figure {
        double of(Band band, int column);
    }

    private void longs(String key, Band band, Whole value) throws IOException {
        out.name(key).beginArray();
        for (int column = 0; column < band.columns(); column++) {
            if (band.samples(column) > 0) {
                out.value(value.of(band, column));
            }
        }
        out.endArray();
    }

    private void doubles(String key, Band band, Figure value) throws IOException {
        out.name(key).beginArray();
        for (int column = 0; column < band.columns(); column++) {
            if (band.samples(column) > 0) {
                out.value(value.of(band, column));
            }
        }
        out.endArray();
    }

    private void missing(String key, Band band, Whole value) throws IOException {
        out.name(key).beginArray();
        for (int column = 0; column < band.columns(); column++) {
            if (band.isMissing(column)) {
                out.value(value.of(band, column));
            }
        }
        out.endArray();
    }
}
