package tautlog.service;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.util.Optional;
import tautlog.config.Reading;

/**
 * Writes an entry as a line of the ledger.
 *
 * <pre>
 *   {"id":"20260504T143005Z-7f3a9c2e1b04","schema":1,"kind":"done","at":"2026-05-04T14:30:00Z","written":"…","task":"joint-crosses","by":"…"}
 * </pre>
 *
 * <p>The id stands first: by that the reader finds where the next entry begins behind one that was torn.
 */
public final class EntryLine {
    private static final Gson GSON = new GsonBuilder().disableHtmlEscaping().create();

    private EntryLine() {}

    /** The line without its line feed; holds none. */
    public static String of(Entry entry) {
        JsonObject json = new JsonObject();
        json.addProperty("id", entry.id());
        json.addProperty("schema", EntryReader.SCHEMA);
        json.addProperty("kind", entry.act().kind());
        if (!(entry.act() instanceof Act.Worked)) {
            json.addProperty("at", entry.at().toString());
        }
        json.addProperty("written", entry.written().toString());
        entry.winch().ifPresent(winch -> json.addProperty("winch", winch));
        act(json, entry.act());
        entry.by().ifPresent(by -> json.addProperty("by", by));
        entry.note().ifPresent(note -> json.addProperty("note", note));
        entry.replaces().ifPresent(id -> json.addProperty("replaces", id));
        return GSON.toJson(json);
    }

    private static void act(JsonObject json, Act act) {
        act.subject().ifPresent(gear -> {
            json.addProperty("gear", gear.gear());
            gear.piece().ifPresent(piece -> json.addProperty("piece", piece));
        });
        if (act instanceof Act.Done done) {
            json.addProperty("task", done.task());
        } else if (act instanceof Act.Inspected inspected) {
            inspected(json, inspected);
        } else if (act instanceof Act.Worked worked) {
            json.addProperty("from", worked.from().toString());
            json.addProperty("to", worked.to().toString());
            number(json, "shaft_h", worked.shaftHours());
            number(json, "pull_h", worked.pullHours());
            number(json, "pulls", worked.pulls());
        }
    }

    private static void inspected(JsonObject json, Act.Inspected inspected) {
        json.addProperty("result", Reading.word(inspected.verdict()));
        inspected.figures().forEach(json::addProperty);
        if (!inspected.damage().isEmpty()) {
            JsonArray damage = new JsonArray();
            inspected.damage().forEach(damage::add);
            json.add("damage", damage);
        }
    }

    private static void number(JsonObject json, String key, Optional<BigDecimal> value) {
        value.ifPresent(number -> json.addProperty(key, number));
    }
}
