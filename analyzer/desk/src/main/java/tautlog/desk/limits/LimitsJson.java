package tautlog.desk.limits;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import tautlog.desk.page.StandingText;
import tautlog.rig.FullPull;
import tautlog.rig.Gear;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;

/**
 * The limits of a rig for programs: forces in newtons with all their digits, null where nothing is known.
 *
 * <pre>
 *   { "schema": 1, "winch": …, "rated_pull_n": …, "cell_at": …, "cell_capacity_tension_n": …,
 *     "hookups": [ { "id": …, "default": …, "selector": …, "limit_n": …, "limit_is_at_most": …, "governing": …,
 *         "breaks_first": …, "breaks_first_at_n": …, "strength_unknown": [ … ], "past_limit_at_full_pull": [ … ],
 *         "chokers_outlasting_rope": [ … ], "chokers_perhaps_outlasting_rope": [ … ],
 *         "items": [ { "gear": …, "as": …, "multiple": …, "allowed_n": …, "allowed_is_at_most": …, "proof_n": …,
 *             "breaking_n": …, "limit_by_item_n": …, "share_at_full_pull": …, "notes": [ … ] } ] } ],
 *     "gear": [ { "id": …, "kind": …, "description": …, "count": …, "serial": …, "fitted": …, "last_inspection": …,
 *         "wll_n": …, "wll_source": …, "out_of_service": … } ],
 *     "standing_text": [ … ] }
 * </pre>
 */
public final class LimitsJson {
    private final JsonWriter out;

    private LimitsJson(JsonWriter out) {
        this.out = out;
    }

    /**
     * The document.
     *
     * @param hookupId the only hookup to show; empty for all
     * @throws IllegalArgumentException if the rig has no such hookup; the message names those it has
     */
    public static String render(Rig rig, Optional<String> hookupId) {
        List<Hookup> hookups = ChosenHookups.of(rig, hookupId);
        StringWriter text = new StringWriter();
        try (JsonWriter out = new JsonWriter(text)) {
            out.setFormattingStyle(FormattingStyle.PRETTY);
            out.setSerializeNulls(true);
            new LimitsJson(out).write(rig, hookups);
        } catch (IOException impossible) {
            throw new UncheckedIOException("writing to memory", impossible);
        }
        return text + "\n";
    }

    private void write(Rig rig, List<Hookup> hookups) throws IOException {
        out.beginObject();
        out.name("schema").value(1);
        out.name("winch").value(rig.winch());
        number("rated_pull_n", Optional.of(rig.ratedPullNewtons()));
        text("cell_at", rig.cell().map(cell -> cell.at().word()));
        number("cell_capacity_tension_n", rig.cellCapacityNewtons());
        out.name("hookups").beginArray();
        for (Hookup hookup : hookups) {
            write(hookup, FullPull.of(rig, hookup));
        }
        out.endArray();
        out.name("gear").beginArray();
        for (Gear gear : rig.gear()) {
            write(gear);
        }
        out.endArray();
        texts("standing_text", StandingText.sentences());
        out.endObject();
    }

    private void write(Hookup hookup, FullPull full) throws IOException {
        out.beginObject();
        out.name("id").value(hookup.id());
        out.name("default").value(hookup.isDefault());
        number(
                "selector",
                hookup.selector().stream().mapToObj(BigDecimal::valueOf).findFirst());
        number("limit_n", Optional.of(hookup.limit().newtons()));
        out.name("limit_is_at_most").value(hookup.limit().isAtMost());
        out.name("governing").value(hookup.limit().governing());
        text("breaks_first", full.breaksFirst().map(LoadedItem::gear));
        number("breaks_first_at_n", full.breaksFirst().flatMap(LoadedItem::tensionAtBreaking));
        names("strength_unknown", full.ofUnknownStrength());
        names("past_limit_at_full_pull", full.overloaded());
        names("chokers_outlasting_rope", full.chokersThatOutlastTheRope());
        names("chokers_perhaps_outlasting_rope", full.chokersThatMayOutlastTheRope());
        out.name("items").beginArray();
        for (LoadedItem item : hookup.items()) {
            write(item, full.tensionNewtons());
        }
        out.endArray();
        out.endObject();
    }

    private void write(LoadedItem item, BigDecimal fullPullNewtons) throws IOException {
        out.beginObject();
        out.name("gear").value(item.gear());
        out.name("as").value(item.as());
        number("multiple", Optional.of(item.multiple()));
        number("allowed_n", Optional.of(item.allowedNewtons()));
        out.name("allowed_is_at_most").value(item.allowedIsAtMost());
        number("proof_n", item.proofNewtons());
        number("breaking_n", item.breakingNewtons());
        number("limit_by_item_n", Optional.of(item.tensionAtAllowed()));
        number("share_at_full_pull", Optional.of(item.share(fullPullNewtons)));
        texts("notes", item.notes());
        out.endObject();
    }

    private void write(Gear gear) throws IOException {
        out.beginObject();
        out.name("id").value(gear.id());
        out.name("kind").value(gear.kind().word());
        out.name("description").value(gear.description());
        out.name("count").value(gear.count());
        text("serial", gear.serial());
        text("fitted", gear.fitted().map(Object::toString));
        text("last_inspection", gear.lastInspection().map(Object::toString));
        number("wll_n", gear.rating().map(rating -> rating.newtons()));
        text("wll_source", gear.rating().map(rating -> rating.source()));
        text("out_of_service", gear.outOfService());
        out.endObject();
    }

    private void names(String key, List<LoadedItem> items) throws IOException {
        texts(key, items.stream().map(LoadedItem::gear).toList());
    }

    private void texts(String key, List<String> values) throws IOException {
        out.name(key).beginArray();
        for (String value : values) {
            out.value(value);
        }
        out.endArray();
    }

    private void text(String key, Optional<String> value) throws IOException {
        out.name(key);
        if (value.isPresent()) {
            out.value(value.get());
        } else {
            out.nullValue();
        }
    }

    private void number(String key, Optional<BigDecimal> value) throws IOException {
        out.name(key);
        if (value.isPresent()) {
            out.jsonValue(value.get().toPlainString());
        } else {
            out.nullValue();
        }
    }
}
