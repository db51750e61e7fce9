package tautlog.recording;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32C;
import tautlog.detect.Finding;

/**
 * Stores a finding as the JSON of its record: one key for each component, under the component's name. A pull's sum of squares is
 * written only under a curve.
 */
final class FindingJson {
    private static final String SQUARES = "countSquares";
    private static final Gson GSON =
            new GsonBuilder().serializeSpecialFloatingPointValues().create();
    private static final Map<String, Class<? extends Finding>> KINDS = Map.of(
            "pull", Finding.Pull.class,
            "overload", Finding.Overload.class,
            "shock", Finding.Shock.class,
            "jolt", Finding.Jolt.class,
            "drop", Finding.Drop.class,
            "stall", Finding.Stall.class,
            "trouble", Finding.Trouble.class);

    private FindingJson() {}

    /** CRC-32C over {@code kind|start|json} in UTF-8. */
    static long crc(String kind, long start, String json) {
        CRC32C crc = new CRC32C();
        crc.update((kind + "|" + start + "|" + json).getBytes(StandardCharsets.UTF_8));
        return crc.getValue();
    }

    static String write(Finding finding) {
        if (finding instanceof Finding.Pull pull && pull.countSquares().signum() == 0) {
            JsonObject json = GSON.toJsonTree(finding).getAsJsonObject();
            json.remove(SQUARES);
            return GSON.toJson(json);
        }
        return GSON.toJson(finding);
    }

    /** @throws IllegalArgumentException if {@code kind} is not known or {@code json} is no such finding */
    static Finding read(String kind, String json) {
        Class<? extends Finding> type = KINDS.get(kind.toLowerCase(Locale.ROOT));
        if (type == null) {
            throw new IllegalArgumentException("a finding of kind " + kind + " is not known; known: " + KINDS.keySet());
        }
        try {
            Finding finding = GSON.fromJson(completed(GSON.fromJson(json, JsonElement.class), type), type);
            if (finding == null) {
                throw new IllegalArgumentException("an empty finding of kind " + kind);
            }
            return finding;
        } catch (JsonParseException e) {
            throw new IllegalArgumentException("no finding of kind " + kind + ": " + json, e);
        }
    }

    /** What is not written of a pull under a straight line. */
    private static JsonElement completed(JsonElement json, Class<? extends Finding> type) {
        if (type == Finding.Pull.class && json instanceof JsonObject pull && !pull.has(SQUARES)) {
            pull.addProperty(SQUARES, BigInteger.ZERO);
        }
        return json;
    }
}
