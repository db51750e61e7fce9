package tautlog.recording;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonParseException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32C;
import tautlog.detect.Finding;

/** Stores a finding as the JSON of its record: one key for each component, under the component's name. */
final class FindingJson {
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
        return GSON.toJson(finding);
    }

    /** @throws IllegalArgumentException if {@code kind} is not known or {@code json} is no such finding */
    static Finding read(String kind, String json) {
        Class<? extends Finding> type = KINDS.get(kind.toLowerCase(Locale.ROOT));
        if (type == null) {
            throw new IllegalArgumentException("a finding of kind " + kind + " is not known; known: " + KINDS.keySet());
        }
        try {
            Finding finding = GSON.fromJson(json, type);
            if (finding == null) {
                throw new IllegalArgumentException("an empty finding of kind " + kind);
            }
            return finding;
        } catch (JsonParseException e) {
            throw new IllegalArgumentException("no finding of kind " + kind + ": " + json, e);
        }
    }
}
