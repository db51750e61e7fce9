package tautlog.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.time.Instant;
import java.util.Optional;
import tautlog.desk.pyramid.OutingPyramid;
import tautlog.desk.season.KnownOuting;
import tautlog.desk.season.KnownSeason;
import tautlog.desk.season.SeasonWatch;

/** How new what is known is, for each winch. */
final class LiveJson {
    private LiveJson() {}

    static JsonObject of(SeasonWatch watch, Instant now) {
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.addProperty("now_us", NotesJson.micros(now));
        json.addProperty("stamp", watch.season().stamp() + "." + watch.days().worked());
        json.add("progress", SeasonJson.progress(watch.progress()));
        JsonArray winches = new JsonArray();
        for (String winch : watch.season().winches()) {
            winches.add(winch(watch, winch, now));
        }
        json.add("winches", winches);
        return json;
    }

    private static JsonObject winch(SeasonWatch watch, String winch, Instant now) {
        JsonObject json = new JsonObject();
        json.addProperty("winch", KnownSeason.winchId(winch));
        Optional<Long> newest = Optional.empty();
        boolean open = false;
        for (KnownOuting outing : watch.season().outings()) {
            Optional<OutingPyramid> pyramid = watch.pyramid(outing);
            if (outing.winch().equals(winch) && outing.hasClock() && pyramid.isPresent()) {
                long end = outing.clock().utcMicros(pyramid.get().endTick()).orElseThrow();
                if (newest.isEmpty() || end > newest.get()) {
                    newest = Optional.of(end);
                    open = !outing.outing().closed();
                }
            }
        }
        if (newest.isPresent()) {
            json.addProperty("newest_us", newest.get());
            json.addProperty("age_s", (NotesJson.micros(now) - newest.get()) / 1e6);
        } else {
            json.add("newest_us", JsonNull.INSTANCE);
            json.add("age_s", JsonNull.INSTANCE);
        }
        json.addProperty("open", open);
        return json;
    }
}
