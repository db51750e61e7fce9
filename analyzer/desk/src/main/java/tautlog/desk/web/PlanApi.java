package tautlog.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tautlog.desk.planning.PlanRequest;
import tautlog.desk.planning.PlanText;
import tautlog.desk.planning.PullPlan;
import tautlog.desk.season.KnownRig;
import tautlog.desk.season.KnownSeason;
import tautlog.desk.season.PageJson;
import tautlog.desk.season.SeasonWatch;
import tautlog.desk.season.Trace;
import tautlog.plan.Flaw;
import tautlog.plan.GroundClass;
import tautlog.plan.HaulText;
import tautlog.plan.PlanException;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Hookup;

/** A plan asked for in the browser: what can be chosen, and the document of {@code tautlog plan}, or every flaw with the field it is of. */
final class PlanApi {
    private final SeasonWatch watch;
    private final Trace trace;

    PlanApi(SeasonWatch watch, Trace trace) {
        this.watch = watch;
        this.trace = trace;
    }

    Answer choices() {
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        JsonArray rigs = new JsonArray();
        KnownRig.of(watch, trace).forEach(rig -> rigs.add(rig(rig)));
        json.add("rigs", rigs);
        JsonArray grounds = new JsonArray();
        Arrays.stream(GroundClass.values()).map(PlanApi::ground).forEach(grounds::add);
        json.add("grounds", grounds);
        json.add(
                "units",
                texts(ForceUnit.ON_SCREEN.stream().map(ForceUnit::symbol).toList()));
        return Answer.json(json);
    }

    private JsonObject rig(KnownRig known) {
        JsonObject json = new JsonObject();
        json.addProperty("id", known.id());
        json.addProperty("winch_id", KnownSeason.winchId(known.winch()));
        json.addProperty("winch", known.winch());
        json.addProperty("other", known.isOther());
        known.from().ifPresent(at -> json.addProperty("from_us", NotesJson.micros(at)));
        known.to().ifPresent(at -> json.addProperty("to_us", NotesJson.micros(at)));
        json.addProperty("units", watch.unit().orElse(known.rig().units()).symbol());
        json.add("hookups", texts(known.rig().hookups().stream().map(Hookup::id).toList()));
        return json;
    }

    private static JsonObject ground(GroundClass ground) {
        JsonObject json = new JsonObject();
        json.addProperty("word", ground.word());
        json.addProperty("words", ground.words());
        json.addProperty("friction_low", ground.friction().low());
        json.addProperty("friction_high", ground.friction().high());
        return json;
    }

    Answer plan(Query query) throws RefusedException {
        String id = query.required("rig");
        KnownRig known = KnownRig.of(watch, trace).stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new RefusedException(404, "There is no such rig in the folder."));
        ForceUnit unit = unit(query, known);
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.addProperty("other_rig", known.isOther());
        JsonArray flaws = new JsonArray();
        try {
            PullPlan plan = PullPlan.of(known.rig(), PlanRequest.read(text(query), known.rig()));
            json.add("page", PageJson.of(plan.document(unit)));
            json.add("plan", JsonParser.parseString(plan.json()));
        } catch (PlanException wrong) {
            wrong.flaws().stream().map(PlanApi::flaw).forEach(flaws::add);
        }
        json.add("flaws", flaws);
        return Answer.json(json);
    }

    private ForceUnit unit(Query query, KnownRig known) throws RefusedException {
        Optional<String> symbol = query.text("units");
        if (symbol.isEmpty()) {
            return watch.unit().orElse(known.rig().units());
        }
        return ForceUnit.ON_SCREEN.stream()
                .filter(one -> one.symbol().equals(symbol.get()))
                .findFirst()
                .orElseThrow(() -> new RefusedException(400, "units is no unit for screens."));
    }

    private static PlanText text(Query query) {
        HaulText haul = new HaulText(
                query.text("log").orElse(""),
                query.text("ground"),
                query.text("friction"),
                query.text("slope"),
                query.text("slope-plus-minus"));
        return new PlanText(haul, query.text("block-angle"), query.text("hookup"));
    }

    private static JsonObject flaw(Flaw flaw) {
        JsonObject json = new JsonObject();
        json.addProperty("field", flaw.key());
        json.addProperty("found", flaw.found());
        json.addProperty("allowed", flaw.allowed());
        return json;
    }

    private static JsonArray texts(List<String> texts) {
        JsonArray array = new JsonArray();
        texts.forEach(array::add);
        return array;
    }
}
