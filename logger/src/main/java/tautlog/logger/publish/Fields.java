package tautlog.logger.publish;

import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import tautlog.detect.Known;

/** An object of JSON in the making: keys end in their unit, unknown is null. */
final class Fields {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private final JsonObject json = new JsonObject();

    JsonObject json() {
        return json;
    }

    Fields text(String key, String value) {
        json.addProperty(key, value);
        return this;
    }

    Fields whole(String key, long value) {
        json.addProperty(key, value);
        return this;
    }

    Fields flag(String key, boolean value) {
        json.addProperty(key, value);
        return this;
    }

    /** {@code KEPT_TURNING} as {@code kept-turning}. */
    Fields word(String key, Enum<?> value) {
        return text(key, value.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    Fields known(String key, Known value) {
        if (value == Known.UNKNOWN) {
            json.add(key, JsonNull.INSTANCE);
        } else {
            json.addProperty(key, value == Known.YES);
        }
        return this;
    }

    Fields number(String key, double value) {
        if (Double.isFinite(value)) {
            json.addProperty(key, value);
        } else {
            json.add(key, JsonNull.INSTANCE);
        }
        return this;
    }

    Fields number(String key, OptionalDouble value) {
        return number(key, value.orElse(Double.NaN));
    }

    Fields time(String key, OptionalLong utcMicros) {
        if (utcMicros.isPresent()) {
            text(key, time(utcMicros.getAsLong()));
        } else {
            json.add(key, JsonNull.INSTANCE);
        }
        return this;
    }

    /** ISO 8601 with microseconds. */
    static String time(long utcMicros) {
        return TIME.format(Instant.EPOCH.plus(utcMicros, ChronoUnit.MICROS));
    }
}
