package tautlog.desk.gear;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import tautlog.desk.report.JsonFields;
import tautlog.rig.Band;
import tautlog.rig.Gear;
import tautlog.service.Entry;
import tautlog.usage.DrivelineUse;
import tautlog.usage.Extent;
import tautlog.usage.GearUse;
import tautlog.usage.Greatest;
import tautlog.usage.RopeUse;
import tautlog.usage.TorqueSpeedCell;

/**
 * The lives of gear for programs; unknown is null.
 *
 * <pre>
 *   { "schema": 1, "ledger": …, "ledger_doubts": [ … ], "winches": [ { "winch", "gear": [ LIFE ], "driveline": { … } } ], "notes": [ … ] }
 *   LIFE: id, kind, count, fitted, since: USE, recorded: USE, rope: { half_cycles, miner_cycles, is_at_least },
 *         pieces: [ name, count, standing, open, worst, reasons, answered_at, answered_by ], overloads: [ … ], notes
 *   USE: pulls, assumed_pulls, shocks, past_wll, past_proof, past_breaking, load_n, load_is_at_least, share, share_is_at_least,
 *        seen_h, above_0.25_h … above_1_h, times_are_at_least
 * </pre>
 */
public final class GearJson {
    private static final double NANOS_PER_HOUR = 3_600e9;

    private final JsonFields json;

    private GearJson(JsonFields json) {
        this.json = json;
    }

    /**
     * The document.
     *
     * @param ledger the name of the ledger that was read; empty when none was
     * @param doubts what of it was not read or counts for no winch here, whole sentences
     */
    public static String render(
            List<GearLives.OfWinch> winches, Optional<String> ledger, List<String> doubts, List<String> notes) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new GearJson(new JsonFields(writer)).document(winches, ledger, doubts, notes);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private void document(
            List<GearLives.OfWinch> winches, Optional<String> ledger, List<String> doubts, List<String> notes)
            throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.text("ledger", ledger);
        json.texts("ledger_doubts", doubts);
        json.list("winches", winches, winch -> {
            json.text("winch", winch.rig().winch());
            json.list("gear", winch.lives(), this::life);
            json.begin("driveline");
            driveline(winch.driveline());
            json.end();
        });
        json.texts("notes", notes);
        json.end();
    }

    private void life(GearLife life) throws IOException {
        json.text("id", life.id());
        json.text("kind", life.gear().map(gear -> gear.kind().word()));
        json.whole(
                "count",
                life.gear().map(Gear::count).map(java.util.OptionalLong::of).orElse(java.util.OptionalLong.empty()));
        json.time("fitted", life.fitted());
        json.begin("since");
        use(life.since());
        json.end();
        json.begin("recorded");
        use(life.recorded());
        json.end();
        if (life.ropes().isPresent()) {
            rope(life.ropes().get());
        }
        json.list("pieces", life.pieces(), this::piece);
        json.list("overloads", life.loads(), this::load);
        json.texts("notes", life.notes());
    }

    private void use(GearUse use) throws IOException {
        json.whole("pulls", use.pulls());
        json.whole("assumed_pulls", use.assumedPulls());
        json.whole("shocks", use.shocks());
        for (Band band : Band.values()) {
            json.whole(band.word().replace('-', '_'), use.overloads(band));
        }
        json.number("load_n", value(use.loadNewtons()));
        json.flag("load_is_at_least", use.loadNewtons().atLeast());
        json.number("share", value(use.share()));
        json.flag("share_is_at_least", use.share().atLeast() || use.shareIsAtLeast());
        json.number("seen_h", use.seen().hours());
        for (int i = 0; i < GearUse.SHARES.size(); i++) {
            json.number(
                    "above_" + GearUse.SHARES.get(i) + "_h", use.above().get(i).hours());
        }
        json.flag("times_are_at_least", use.timesAreAtLeast());
    }

    private static double value(Greatest greatest) {
        return greatest.seen() ? greatest.value() : Double.NaN;
    }

    private void rope(RopeUse use) throws IOException {
        json.begin("rope");
        json.texts("half_cycles_to", RopeUse.EDGES.stream().map(String::valueOf).toList());
        json.texts("half_cycles", use.halfCycles().stream().map(String::valueOf).toList());
        json.number("miner_cycles", use.minerCycles());
        json.flag("is_at_least", use.isAtLeast());
        json.end();
    }

    private void piece(Piece piece) throws IOException {
        json.text("name", piece.name());
        json.whole("count", piece.count());
        json.text("standing", piece.standing().word());
        json.whole("open", piece.open().size());
        json.text("worst", piece.worst().map(Band::word));
        json.texts("reasons", piece.reasons());
        json.time("answered_at", piece.since());
        json.text("answered_by", piece.answeredBy().flatMap(Entry::by));
    }

    private void load(GearLoad load) throws IOException {
        json.time("start", load.at());
        json.text("band", load.event().band().word());
        json.flag("only_may_be", load.event().onlyMayBe());
        json.number("load_n", load.event().loadNewtons());
        json.number("allowed_n", load.event().allowedNewtons());
        json.number("share", load.event().share());
        json.flag("at_least", load.event().atLeast());
        json.flag("governing", load.event().governing());
        json.text("hookup", load.event().hookup());
        json.flag("hookup_is_assumed", load.event().hookupIsAssumed());
    }

    private void driveline(DrivelineUse use) throws IOException {
        json.whole("outings", use.outings());
        json.whole("outings_not_described", use.outingsNotDescribed());
        boolean isKnown = use.outings() > 0;
        hours("engaged_h", use.engagedNanos(), isKnown);
        hours("clutch_unknown_h", use.clutchUnknownNanos(), isKnown);
        hours("disengaged_h", use.disengagedNanos(), isKnown);
        hours("tension_unknown_h", use.tensionUnknownNanos(), isKnown);
        hours("still_h", use.stillNanos(), isKnown);
        hours("above_rating_least_h", use.aboveRatingLeastNanos(), isKnown);
        hours("above_rating_most_h", use.aboveRatingMostNanos(), isKnown);
        extent("torque", "nm", use.torqueNewtonMetres());
        extent("power", "kw", use.powerKilowatts());
        json.list("first_layer", use.firstLayer(), this::cell);
        json.list("last_layer", use.lastLayer(), this::cell);
    }

    private void hours(String key, long nanos, boolean isKnown) throws IOException {
        json.number(key, isKnown ? nanos / NANOS_PER_HOUR : Double.NaN);
    }

    private void extent(String what, String unit, Extent extent) throws IOException {
        json.number(what + "_low_" + unit, extent.seen() ? extent.low() : Double.NaN);
        json.number(what + "_high_" + unit, extent.seen() && !extent.atLeast() ? extent.high() : Double.NaN);
        json.flag(what + "_is_at_least", extent.atLeast());
    }

    private void cell(TorqueSpeedCell cell) throws IOException {
        json.whole("torque_tenths", cell.torqueTenths());
        json.whole("speed_tenths", cell.speedTenths());
        json.number("h", cell.nanos() / NANOS_PER_HOUR);
    }
}
