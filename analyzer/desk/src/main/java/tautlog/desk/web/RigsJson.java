package tautlog.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tautlog.desk.limits.LimitsJson;
import tautlog.desk.season.KnownOuting;
import tautlog.desk.season.KnownSeason;
import tautlog.desk.season.SeasonWatch;
import tautlog.desk.season.Trace;
import tautlog.desk.season.WhatIf;
import tautlog.rig.Rig;

/** The rigs that were in force, from when to when, with what each hookup may carry. */
final class RigsJson {
    private RigsJson() {}

    static JsonObject of(SeasonWatch watch, Trace trace, WhatIf whatIf) {
        Map<Rig, JsonObject> known = new LinkedHashMap<>();
        for (KnownOuting outing : watch.season().outings()) {
            Optional<Rig> rig = trace.rig(outing, whatIf);
            if (rig.isPresent()) {
                JsonObject one = known.computeIfAbsent(rig.get(), of -> begun(of, outing));
                outing.end().ifPresent(end -> one.addProperty("to_us", NotesJson.micros(end)));
            }
        }
        JsonArray rigs = new JsonArray();
        known.values().forEach(rigs::add);
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.add("rigs", rigs);
        return json;
    }

    private static JsonObject begun(Rig rig, KnownOuting outing) {
        JsonObject one = new JsonObject();
        one.addProperty("winch", KnownSeason.winchId(outing.winch()));
        one.add("from_us", JsonNull.INSTANCE);
        one.add("to_us", JsonNull.INSTANCE);
        outing.start().ifPresent(start -> one.addProperty("from_us", NotesJson.micros(start)));
        one.add("limits", JsonParser.parseString(LimitsJson.render(rig, Optional.empty())));
        return one;
    }
}
