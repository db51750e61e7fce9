package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.time.Duration;
import java.time.Instant;

/** Comparisons of a report with a drawing: times ±1 sample, forces ±1 count. */
final class Reported {
    /** One count, and what rounding to a double and to text adds. */
    static final double COUNT_N = 0.0101;
    /** One sample, and what rounding adds. */
    static final double SAMPLE_S = 0.002_001;

    static final double RATE_HZ = IndependentInstrument.RATE_HZ;
    private static final Instant START = Instant.parse("2026-05-04T07:00:00Z");

    private Reported() {}

    static JsonArray list(JsonObject report, String key, int size) {
        JsonArray array = report.getAsJsonArray(key);
        assertEquals(size, array.size(), () -> key + ": " + array);
        return array;
    }

    static JsonObject only(JsonObject report, String key) {
        return list(report, key, 1).get(0).getAsJsonObject();
    }

    /** The element of {@code array} that has {@code value} under {@code key}. */
    static JsonObject named(JsonArray array, String key, String value) {
        for (JsonElement item : array) {
            if (item.getAsJsonObject().get(key).getAsString().equals(value)) {
                return item.getAsJsonObject();
            }
        }
        throw new AssertionError("no " + key + " " + value + " in " + array);
    }

    static void at(int sample, JsonElement time) {
        Instant expected = START.plusMillis(2L * sample);
        Duration off =
                Duration.between(expected, Instant.parse(time.getAsString())).abs();
        assertTrue(off.compareTo(Duration.ofMillis(2)) <= 0, () -> time + " instead of " + expected);
    }

    static void span(int from, int to, JsonObject finding) {
        at(from, finding.get("start"));
        at(to, finding.get("end"));
    }

    /** A time of {@code samples} samples. */
    static void lasts(double samples, JsonObject finding, String key) {
        assertEquals(samples / RATE_HZ, finding.get(key).getAsDouble(), SAMPLE_S, key);
    }

    /** The force that {@code counts} are. */
    static void force(double counts, JsonObject finding, String key) {
        assertEquals(counts / Drawing.COUNTS_PER_NEWTON, finding.get(key).getAsDouble(), COUNT_N, key);
    }

    /** The share of {@code limitNewtons} that {@code counts} are, as exact as the force. */
    static void share(double counts, double limitNewtons, JsonObject finding) {
        assertEquals(
                counts / Drawing.COUNTS_PER_NEWTON / limitNewtons,
                finding.get("share").getAsDouble(),
                COUNT_N / limitNewtons,
                "share");
    }

    static void number(double expected, JsonObject finding, String key) {
        assertEquals(expected, finding.get(key).getAsDouble(), 1e-6, key);
    }

    static void flag(boolean expected, JsonObject finding, String key) {
        assertEquals(expected, finding.get(key).getAsBoolean(), key);
    }

    static void text(String expected, JsonObject finding, String key) {
        assertEquals(expected, finding.get(key).getAsString(), key);
    }

    static void unknown(JsonObject finding, String key) {
        assertTrue(finding.get(key).isJsonNull(), () -> key + ": " + finding);
    }
}
