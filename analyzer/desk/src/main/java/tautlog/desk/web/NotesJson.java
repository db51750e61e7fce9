package tautlog.desk.web;

import com.google.gson.JsonObject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import tautlog.desk.notes.Note;
import tautlog.desk.season.KnownSeason;

/** Notes as the page reads and sends them. */
final class NotesJson {
    private static final int LONGEST_ABOUT = 100;

    private NotesJson() {}

    /** One that names no winch has null for it: it may be about any. */
    static JsonObject of(Note note) {
        JsonObject json = new JsonObject();
        json.addProperty("winch", note.winch().map(KnownSeason::winchId).orElse(null));
        json.addProperty("at_us", micros(note.at()));
        json.addProperty("about", note.about());
        json.addProperty("text", note.text());
        note.written().ifPresent(written -> json.addProperty("written", written.toString()));
        return json;
    }

    static long micros(Instant at) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, at);
    }

    /** @throws IllegalArgumentException if it is none */
    static Note read(JsonObject json, String winch, Instant now) {
        String about = json.get("about").getAsString();
        if (about.length() > LONGEST_ABOUT) {
            throw new IllegalArgumentException("about is longer than " + LONGEST_ABOUT);
        }
        long micros = json.get("at_us").getAsBigDecimal().longValueExact();
        if (micros < 0 || micros > Api.LATEST) {
            throw new IllegalArgumentException("at_us is no time of ours: " + micros);
        }
        Instant at = Instant.EPOCH.plus(micros, ChronoUnit.MICROS);
        return Note.of(winch, at, about, json.get("text").getAsString(), now.truncatedTo(ChronoUnit.SECONDS));
    }
}
