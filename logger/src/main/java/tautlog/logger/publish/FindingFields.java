package tautlog.logger.publish;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.detect.Finding;
import tautlog.recording.OutingTrail;
import tautlog.recording.Said.SaidFinding;
import tautlog.rig.Band;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.SampleRate;

/**
 * A finding's keys as in {@code report --json}, without the intervals and the place, which only the desk works out. Formulas:
 * {@code analyzer/FINDINGS.md}.
 */
final class FindingFields {
    private static final int RESOLVED_FROM = 4;

    private final Rig rig;
    private final Calibration calibration;
    private final SampleRate rate;
    private final OutingTrail outing;

    FindingFields(Rig rig, Calibration calibration, SampleRate rate, OutingTrail outing) {
        this.rig = rig;
        this.calibration = calibration;
        this.rate = rate;
        this.outing = outing;
    }

    /** Id of the hookup that it names; empty when it names none. */
    static Optional<String> hookup(Finding finding) {
        if (finding instanceof Finding.Pull pull) {
            return Optional.of(pull.hookup());
        } else if (finding instanceof Finding.Overload overload) {
            return Optional.of(overload.hookup());
        } else if (finding instanceof Finding.Shock shock) {
            return Optional.of(shock.hookup());
        } else if (finding instanceof Finding.Jolt jolt) {
            return Optional.of(jolt.hookup());
        }
        return Optional.empty();
    }

    JsonObject of(SaidFinding said) {
        Finding finding = said.finding();
        Fields fields = new Fields();
        if (finding instanceof Finding.Shock shock) {
            shock(fields, shock, said);
        } else if (finding instanceof Finding.Jolt jolt) {
            jolt(fields.time("start", outing.utcMicros(said.startTick())), jolt, said);
        } else if (finding instanceof Finding.Drop drop) {
            drop(fields.time("start", outing.utcMicros(said.startTick())), drop);
        } else {
            fields.time("start", outing.utcMicros(said.startTick())).time("end", outing.utcMicros(said.lastTick()));
            spanned(fields, finding);
        }
        return fields.json();
    }

    private void spanned(Fields fields, Finding finding) {
        if (finding instanceof Finding.Pull pull) {
            pull(fields, pull);
        } else if (finding instanceof Finding.Overload overload) {
            overload(fields, overload);
        } else if (finding instanceof Finding.Stall stall) {
            fields.word("ended", stall.ended())
                    .number("least_rpm", stall.leastRpm())
                    .number("before_rpm", stall.baselineRpm())
                    .number("tension_n", newtons(stall.counts()));
        } else if (finding instanceof Finding.Trouble trouble) {
            fields.word("trouble", trouble.trouble());
        }
    }

    private void pull(Fields fields, Finding.Pull pull) {
        double sum = calibration.meanNewtons(pull.countSum(), pull.countSquares(), pull.samples()) * pull.samples();
        fields.number("duration_s", rate.seconds(pull.endNumber() - pull.startNumber() + 1))
                .number("peak_n", newtons(pull.peak()))
                .number("mean_n", sum / pull.samples())
                .number("impulse_ns", sum / rate.hertz());
        against(fields, pull.hookup(), newtons(pull.shareCounts()));
        fields.whole("overloads", pull.overloads())
                .whole("shocks", pull.shocks())
                .known("held", pull.held())
                .flag("has_gap", pull.hasGap())
                .flag("cut_by_gap", pull.cutByGap())
                .flag("cut_by_end", pull.cutByEnd())
                .flag("hookup_assumed", pull.hookupIsAssumed())
                .flag("at_least", pull.atLeast());
    }

    private void overload(Fields fields, Finding.Overload overload) {
        BigDecimal peak = calibration.exactNewtons(overload.peak());
        fields.number("above_s", rate.seconds(overload.aboveSamples())).number("peak_n", peak.doubleValue());
        against(fields, overload.hookup(), peak.doubleValue());
        fields.flag("at_least", overload.atLeast())
                .flag("has_gap", overload.hasGap())
                .flag("cut_by_gap", overload.cutByGap())
                .flag("cut_by_end", overload.cutByEnd())
                .flag("hookup_assumed", overload.hookupIsAssumed());
        rig.hookup(overload.hookup()).ifPresent(hookup -> {
            fields.text("governing", hookup.limit().governing())
                    .text("band", hookup.band(peak).orElse(Band.PAST_WLL).word());
            fields.json().add("items", items(hookup, peak));
        });
    }

    private static JsonArray items(Hookup hookup, BigDecimal peak) {
        JsonArray items = new JsonArray();
        for (LoadedItem item : hookup.items()) {
            items.add(new Fields()
                    .text("gear", item.gear())
                    .number("load_n", item.loadNewtons(peak).doubleValue())
                    .number("allowed_n", item.allowedNewtons().doubleValue())
                    .flag("allowed_is_at_most", item.allowedIsAtMost())
                    .number("share", item.share(peak).doubleValue())
                    .json());
        }
        return items;
    }

    private void shock(Fields fields, Finding.Shock shock, SaidFinding said) {
        long rise = shock.peakNumber() - shock.startNumber();
        double peak = newtons(shock.peak());
        OptionalDouble settled = shock.settledKnown()
                ? OptionalDouble.of(calibration.newtons(shock.settledTwice() / 2.0))
                : OptionalDouble.empty();
        boolean hasFactor = settled.isPresent() && settled.getAsDouble() > 0;
        double steepness = said.startCount().isPresent()
                ? (peak - newtons(said.startCount().getAsInt())) / rate.seconds(rise)
                : Double.NaN;
        fields.time("at", outing.utcMicros(said.lastTick()))
                .number("slack_s", rate.seconds(shock.slackSamples()))
                .number("rise_s", rate.seconds(rise))
                .number("rise_n_per_s", steepness)
                .number("peak_n", peak)
                .number("peak_if_half_sine_n", peak / Math.cos(Math.PI / (4 * rise)))
                .flag("resolved", rise >= RESOLVED_FROM)
                .number("settled_n", settled)
                .number("factor", hasFactor ? peak / settled.getAsDouble() : Double.NaN)
                .flag("has_gap", shock.hasGap());
        against(fields, shock.hookup(), peak);
        fields.flag("at_least", shock.atLeast());
    }

    private void jolt(Fields fields, Finding.Jolt jolt, SaidFinding said) {
        double peak = newtons(jolt.peak());
        fields.time("at", outing.utcMicros(said.lastTick()))
                .number("peak_n", peak)
                .number("rise_n", peak - newtons(jolt.least()))
                .number("rise_s", rate.seconds(jolt.peakNumber() - jolt.startNumber()));
        against(fields, jolt.hookup(), peak);
        fields.flag("at_least", jolt.atLeast());
    }

    private void drop(Fields fields, Finding.Drop drop) {
        fields.number("before_n", newtons(drop.before()))
                .number("after_n", newtons(drop.after()))
                .number("fall_s", rate.seconds(drop.fallNumber() - drop.startNumber()))
                .known("stays_slack", drop.staysSlack())
                .word("shaft", drop.shaft())
                .known("clutch", drop.clutch())
                .known("brake", drop.brake());
    }

    private void against(Fields fields, String id, double newtons) {
        Hookup hookup = rig.hookup(id).orElseGet(rig::lowest);
        double limit = hookup.limit().newtons().doubleValue();
        fields.text("hookup", id)
                .number("limit_n", limit)
                .flag("limit_is_at_most", hookup.limit().isAtMost())
                .number("share", newtons / limit);
    }

    private double newtons(int counts) {
        return calibration.exactNewtons(counts).doubleValue();
    }
}
