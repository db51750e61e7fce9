package tautlog.desk.report;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import tautlog.detect.Known;

/** The fields of our JSON documents: one way to write a time, a number, something unknown. */
public final class JsonFields {
    private static final DateTimeFormatter UTC = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);
    /** Far below a count, and short enough to hide how doubles are rounded. */
    private static final MathContext DIGITS = new MathContext(12);

    private final JsonWriter out;

    public JsonFields(JsonWriter out) {
        this.out = out;
    }

    /** A writer with indents that writes null where nothing is known. */
    public static JsonWriter writer(Writer text) {
        JsonWriter writer = new JsonWriter(text);
        writer.setFormattingStyle(FormattingStyle.PRETTY);
        writer.setSerializeNulls(true);
        return writer;
    }

    /** ISO 8601 with microseconds, ending in Z. */
    public static String time(Instant instant) {
        return UTC.format(instant);
    }

    /** A number without an exponent. */
    public static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).round(DIGITS);
        String plain = rounded.stripTrailingZeros().toPlainString();
        return rounded.signum() == 0 ? "0.0" : plain.contains(".") ? plain : plain + ".0";
    }

    /** What stands in an object of a list. */
    public interface Fields<T> {
        void write(T value) throws IOException;
    }

    public void begin() throws IOException {
        out.beginObject();
    }

    public void begin(String key) throws IOException {
        out.name(key).beginObject();
    }

    public void end() throws IOException {
        out.endObject();
    }

    public <T> void list(String key, List<T> values, Fields<T> fields) throws IOException {
        out.name(key).beginArray();
        for (T value : values) {
            out.beginObject();
            fields.write(value);
            out.endObject();
        }
        out.endArray();
    }

    public void texts(String key, List<String> values) throws IOException {
        out.name(key).beginArray();
        for (String value : values) {
            out.value(value);
        }
        out.endArray();
    }

    /** @param values all finite */
    public void numbers(String key, List<Double> values) throws IOException {
        out.name(key).beginArray();
        for (double value : values) {
            out.jsonValue(number(value));
        }
        out.endArray();
    }

    public void text(String key, String value) throws IOException {
        out.name(key).value(value);
    }

    public void text(String key, Optional<String> value) throws IOException {
        out.name(key);
        if (value.isPresent()) {
            out.value(value.get());
        } else {
            out.nullValue();
        }
    }

    public void time(String key, Optional<Instant> value) throws IOException {
        text(key, value.map(JsonFields::time));
    }

    public void whole(String key, long value) throws IOException {
        out.name(key).value(value);
    }

    public void whole(String key, OptionalLong value) throws IOException {
        out.name(key);
        if (value.isPresent()) {
            out.value(value.getAsLong());
        } else {
            out.nullValue();
        }
    }

    /** @param value null is written when it is not finite */
    public void number(String key, double value) throws IOException {
        out.name(key);
        if (Double.isFinite(value)) {
            out.jsonValue(number(value));
        } else {
            out.nullValue();
        }
    }

    /** A list on one line; null is written for what is not finite. */
    public void numbers(String key, double[] values) throws IOException {
        StringBuilder list = new StringBuilder("[");
        for (double value : values) {
            list.append(list.length() > 1 ? "," : "").append(Double.isFinite(value) ? number(value) : "null");
        }
        out.name(key).jsonValue(list.append(']').toString());
    }

    public void number(String key, OptionalDouble value) throws IOException {
        number(key, value.orElse(Double.NaN));
    }

    public void flag(String key, boolean value) throws IOException {
        out.name(key).value(value);
    }

    public void known(String key, Known value) throws IOException {
        out.name(key);
        if (value == Known.UNKNOWN) {
            out.nullValue();
        } else {
            out.value(value == Known.YES);
        }
    }
}
