package tautlog.desk.planning;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.desk.page.StandingText;
import tautlog.desk.report.JsonFields;
import tautlog.plan.Friction;
import tautlog.plan.GreenLog;
import tautlog.plan.GroundClass;
import tautlog.plan.Haul;
import tautlog.quantity.Length;
import tautlog.rig.LoadedItem;

/**
 * A plan for programs: newtons, kilograms, metres; null where nothing is known.
 *
 * <pre>
 *   { "schema": 1, "winch": …, "rated_pull_n": …,
 *     "log": { "words": …, "length_m": …, "diameters_m": [ … ], "formula": …, "volume_m3": …, "density_kg_m3": …,
 *         "density_source": …, "mass_kg": …, "mass_low_kg": …, "mass_high_kg": … },
 *     "ground": { "class": …, "friction_low": …, "friction_high": …, "assumed": … },
 *     "slope": { "low_deg": …, "high_deg": …, "assumed": … },
 *     "pull": { "low_n": …, "high_n": …, "may_run_by_itself": … },        below 0: so much must hold the log back
 *     "hookups": [ { "id": …, "block_angle_deg": …, "limit_n": …, "limit_is_at_most": …, "governing": …,
 *         "tension_low_n": …, "tension_high_n": …, "share_low": …, "share_high": …,   null where the log may run
 *         "full_pull_share": …, "past_limit_at_full_pull": [ … ], "breaks_first": …, "breaks_first_at_n": …,
 *         "strength_unknown": [ … ],
 *         "items": [ { "gear": …, "as": …, "multiple": …, "allowed_n": …, "allowed_is_at_most": …, "load_low_n": …,
 *             "load_high_n": …, "share_low": …, "share_high": …, "full_pull_load_n": …, "full_pull_share": … } ],
 *         "by_block_angle": [ { "block_angle_deg": …, "block_multiple": …, "limit_n": …, "governing": …,
 *             "breaks_first": …, "breaks_first_at_n": … } ] } ],           150 to 0, empty without a fixed block
 *     "does_not_know": [ … ], "standing_text": [ … ] }
 * </pre>
 */
final class PlanJson {
    private final JsonFields fields;

    private PlanJson(JsonFields fields) {
        this.fields = fields;
    }

    static String render(PullPlan plan) {
        StringWriter text = new StringWriter();
        try (JsonWriter out = JsonFields.writer(text)) {
            new PlanJson(new JsonFields(out)).write(plan);
        } catch (IOException impossible) {
            throw new UncheckedIOException("writing to memory", impossible);
        }
        return text + "\n";
    }

    private void write(PullPlan plan) throws IOException {
        Haul haul = plan.request().haul();
        fields.begin();
        fields.whole("schema", 1);
        fields.text("winch", plan.rig().winch());
        fields.number("rated_pull_n", plan.rig().ratedPullNewtons().doubleValue());
        log(haul.log());
        ground(haul.friction());
        fields.begin("slope");
        fields.number("low_deg", haul.slope().degrees().low());
        fields.number("high_deg", haul.slope().degrees().high());
        fields.flag("assumed", haul.slope().isAssumed());
        fields.end();
        fields.begin("pull");
        fields.number("low_n", haul.pullNewtons().low());
        fields.number("high_n", haul.pullNewtons().high());
        fields.flag("may_run_by_itself", haul.mayRun());
        fields.end();
        fields.list("hookups", plan.pulls(), this::pull);
        fields.texts("does_not_know", PlanWords.unknown());
        fields.texts("standing_text", StandingText.sentences());
        fields.end();
    }

    private void log(GreenLog log) throws IOException {
        fields.begin("log");
        fields.text("words", log.density().words());
        fields.number("length_m", log.length().metres());
        fields.numbers(
                "diameters_m",
                log.diameters().all().stream().map(Length::metres).toList());
        fields.text("formula", log.diameters().formula());
        fields.number("volume_m3", log.cubicMetres());
        fields.number("density_kg_m3", log.density().kilogramsPerCubicMetre());
        fields.text("density_source", log.density().source());
        fields.number("mass_kg", log.kilograms());
        fields.number("mass_low_kg", log.kilogramsInterval().low());
        fields.number("mass_high_kg", log.kilogramsInterval().high());
        fields.end();
    }

    private void ground(Friction friction) throws IOException {
        fields.begin("ground");
        fields.text("class", friction.ground().map(GroundClass::word));
        fields.number("friction_low", friction.coefficient().low());
        fields.number("friction_high", friction.coefficient().high());
        fields.flag("assumed", friction.isAssumed());
        fields.end();
    }

    private void pull(PlannedPull pull) throws IOException {
        fields.text("id", pull.hookup().id());
        fields.number("block_angle_deg", blockAngle(pull));
        fields.number("limit_n", pull.hookup().limit().newtons().doubleValue());
        fields.flag("limit_is_at_most", pull.hookup().limit().isAtMost());
        fields.text("governing", pull.hookup().limit().governing());
        fields.number("tension_low_n", number(pull.lowNewtons()));
        fields.number("tension_high_n", number(pull.highNewtons()));
        fields.number("share_low", number(pull.lowNewtons().map(pull::ofLimit)));
        fields.number("share_high", number(pull.highNewtons().map(pull::ofLimit)));
        fields.number(
                "full_pull_share", pull.ofLimit(pull.full().tensionNewtons()).doubleValue());
        fields.texts("past_limit_at_full_pull", gear(pull.full().overloaded()));
        breaksFirst(pull);
        fields.texts("strength_unknown", gear(pull.full().ofUnknownStrength()));
        fields.list("items", pull.hookup().items(), item -> item(pull, item));
        fields.list(
                "by_block_angle",
                pull.hookup().turnsTheLine() ? BlockSweep.of(pull).steps() : List.of(),
                this::step);
    }

    private static OptionalDouble blockAngle(PlannedPull pull) {
        return pull.hookup().items().stream()
                .flatMap(item -> item.turn().stream())
                .flatMap(turn -> turn.betweenLines().stream())
                .mapToDouble(angle -> angle.degrees().doubleValue())
                .findFirst();
    }

    private void breaksFirst(PlannedPull pull) throws IOException {
        Optional<LoadedItem> first = pull.full().breaksFirst();
        fields.text("breaks_first", first.map(LoadedItem::gear));
        fields.number("breaks_first_at_n", number(first.flatMap(LoadedItem::tensionAtBreaking)));
    }

    private void item(PlannedPull pull, LoadedItem item) throws IOException {
        fields.text("gear", item.gear());
        fields.text("as", item.as());
        fields.number("multiple", item.multiple().doubleValue());
        fields.number("allowed_n", item.allowedNewtons().doubleValue());
        fields.flag("allowed_is_at_most", item.allowedIsAtMost());
        fields.number("load_low_n", number(pull.lowNewtons().map(item::loadNewtons)));
        fields.number("load_high_n", number(pull.highNewtons().map(item::loadNewtons)));
        fields.number("share_low", number(pull.lowShare(item)));
        fields.number("share_high", number(pull.highShare(item)));
        fields.number(
                "full_pull_load_n",
                item.loadNewtons(pull.full().tensionNewtons()).doubleValue());
        fields.number("full_pull_share", pull.fullShare(item).doubleValue());
    }

    private void step(BlockSweep.Step step) throws IOException {
        fields.whole("block_angle_deg", step.degrees());
        fields.number("block_multiple", step.blockMultiple().doubleValue());
        fields.number("limit_n", step.pull().hookup().limit().newtons().doubleValue());
        fields.text("governing", step.governing());
        breaksFirst(step.pull());
    }

    private static List<String> gear(List<LoadedItem> items) {
        return items.stream().map(LoadedItem::gear).toList();
    }

    private static OptionalDouble number(Optional<BigDecimal> value) {
        return value.stream().mapToDouble(BigDecimal::doubleValue).findFirst();
    }
}
