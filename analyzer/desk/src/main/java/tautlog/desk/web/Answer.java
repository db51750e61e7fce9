package tautlog.desk.web;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** What a request gets. */
@SuppressWarnings("ArrayRecordComponent") // handed on, never compared
record Answer(int status, String type, byte[] body, Map<String, String> headers) {
    private static final Gson SAFE = new GsonBuilder().serializeNulls().create();

    static Answer text(int status, String text) {
        return new Answer(
                status, "text/plain; charset=utf-8", (text + "\n").getBytes(StandardCharsets.UTF_8), Map.of());
    }

    /** Signs that mean something in HTML are written as numbers. */
    static Answer json(JsonElement json) {
        return json(SAFE.toJson(json));
    }

    static Answer json(String json) {
        return new Answer(200, "application/json; charset=utf-8", json.getBytes(StandardCharsets.UTF_8), Map.of());
    }

    /** The same with one header more. */
    Answer with(String header, String value) {
        Map<String, String> more = new java.util.TreeMap<>(headers);
        more.put(header, value);
        return new Answer(status, type, body, more);
    }
}
