package tautlog.service;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.Strictness;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Takes the bytes of a ledger apart: one JSON object a line in UTF-8; lines that are blank or begin with # are passed over, so is a
 * byte order mark in front of any line and a carriage return behind it.
 *
 * <p>Where a line was torn, or its line feed is missing, another file's first line may stand behind it on the same line: objects that begin
 * as {@link EntryLine} writes them are found there, too.
 */
final class LedgerLines {
    private static final String BEGINNING = "{\"id\":";
    private static final Gson STRICT =
            new GsonBuilder().setStrictness(Strictness.STRICT).create();

    /**
     * What stands on a line; several may stand on one.
     *
     * @param number of the line, from 1
     * @param object empty when {@code text} is no whole object
     */
    record Part(int number, String text, Optional<JsonObject> object) {
        /** Whether it looks like a line that was not written to its end. */
        boolean isTorn() {
            return object.isEmpty() && text.startsWith("{") && !text.endsWith("}");
        }
    }

    private LedgerLines() {}

    static List<Part> in(byte[] bytes) {
        List<Part> parts = new ArrayList<>();
        int number = 1;
        int begin = 0;
        for (int i = 0; i <= bytes.length; i++) {
            if (i == bytes.length || bytes[i] == '\n') {
                addLine(parts, number, new String(bytes, begin, i - begin, StandardCharsets.UTF_8));
                number++;
                begin = i + 1;
            }
        }
        return parts;
    }

    private static void addLine(List<Part> parts, int number, String line) {
        String text = line.replaceAll("^[\\s\\uFEFF]+|\\s+$", "");
        if (text.isEmpty() || text.startsWith("#")) {
            return;
        }
        Part whole = part(number, text);
        if (whole.object().isPresent()) {
            parts.add(whole);
            return;
        }
        for (String piece : text.split("(?=" + java.util.regex.Pattern.quote(BEGINNING) + ")", -1)) {
            parts.add(part(number, piece.strip()));
        }
    }

    private static Part part(int number, String text) {
        return new Part(number, text, object(text));
    }

    private static Optional<JsonObject> object(String text) {
        try {
            JsonElement element = STRICT.fromJson(text, JsonElement.class);
            return element instanceof JsonObject object ? Optional.of(object) : Optional.empty();
        } catch (JsonParseException noJson) {
            return Optional.empty();
        }
    }
}
