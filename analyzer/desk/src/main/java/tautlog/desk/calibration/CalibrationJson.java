package tautlog.desk.calibration;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.calibration.Directions;
import tautlog.config.Reading;
import tautlog.desk.report.JsonFields;

/** A calibration as one JSON document; coefficients and their covariance with all their digits, F in newtons. */
public final class CalibrationJson {
    private final CalibrationStudy study;
    private final JsonWriter writer;
    private final JsonFields json;

    private CalibrationJson(CalibrationStudy study, JsonWriter writer) {
        this.study = study;
        this.writer = writer;
        this.json = new JsonFields(writer);
    }

    public static String render(CalibrationStudy study) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new CalibrationJson(study, writer).document();
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory", e);
        }
        return text + "\n";
    }

    private void document() throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.text("file", study.readings().file());
        json.time("calibrated_at", study.calibratedAt());
        json.whole("readings", study.readings().readings().size());
        json.whole("loads", study.steps().size());
        choice();
        fit(study.chosen());
        json.number("least_load_n", study.leastNewtons());
        json.number("greatest_load_n", study.greatestNewtons());
        json.number(
                "reference_percent",
                study.request().referencePercent().map(Number::doubleValue).orElse(Double.NaN));
        json.text(
                "directions",
                Optional.of(study.quality().directions())
                        .filter(directions -> directions != Directions.UNKNOWN)
                        .map(Directions::word));
        json.number(
                "shunt_step_counts",
                study.shuntStepCounts().map(Number::doubleValue).orElse(Double.NaN));
        json.number("resolution_counts", study.countStep().counts().doubleValue());
        json.number(
                "resolution_n",
                study.chosen().newtons(study.countStep().counts().doubleValue()));
        json.flag("resolution_seen", study.countStep().isSeen());
        json.number("lower_limit_factor_counts", study.lowerLimitCounts());
        json.number("lower_limit_factor_n", study.lowerLimitNewtons());
        behaviour();
        uncertainty();
        residuals();
        json.list("cautions", study.cautions(), caution -> {
            json.text("kind", caution.kind());
            json.text("text", caution.label() + ": " + caution.text());
        });
        json.end();
    }

    private void choice() throws IOException {
        DegreeChoice choice = study.choice();
        json.whole("recommended_degree", choice.recommended());
        json.flag("recommendation_settled", choice.settled());
        json.text("recommended_because", choice.because());
        json.number("f_ratio", choice.fRatio());
        json.number("f_probability", choice.probability());
        json.number("line_to_curve_residual_sd_ratio", choice.sdRatio());
        json.number("line_runs_probability", study.line().runs().probability());
        json.number("line_residual_sd_counts", study.line().fit().residualSd());
        json.number("line_r_squared", study.line().fit().rSquared());
    }

    private void fit(Shape shape) throws IOException {
        ResponseFit fit = shape.fit();
        json.whole("degree", fit.degree());
        exact("coefficients", fit.coefficients());
        exact(
                "coefficient_sds",
                java.util.stream.IntStream.rangeClosed(0, fit.degree())
                        .mapToObj(fit::sd)
                        .toList());
        exact("covariance", fit.covariance());
        exact("residual_sd", fit.residualSd());
        exact("residual_sd_counts", fit.residualSd());
        json.number("residual_sd_n", shape.newtons(fit.residualSd()));
        json.whole("degrees_of_freedom", fit.degreesOfFreedom());
        exact("r_squared", fit.rSquared());
        json.number("runs_probability", shape.runs().probability());
    }

    private void behaviour() throws IOException {
        Behaviour seen = study.behaviour();
        OptionalDouble loop = seen.hysteresis()
                .map(widest -> OptionalDouble.of(widest.counts()))
                .orElse(OptionalDouble.empty());
        json.number("full_scale_counts", seen.fullScaleCounts());
        three("repeatability", seen.spreadCounts());
        three("hysteresis", loop);
        json.number(
                "hysteresis_at_n",
                seen.hysteresis().map(Behaviour.Loop::newtons).orElse(Double.NaN));
        three("zero_return", seen.zeroReturnCounts());
    }

    /** In counts, in newtons, and as a share of full scale. */
    private void three(String name, OptionalDouble counts) throws IOException {
        json.number(name + "_counts", counts);
        json.number(name + "_n", counts.isPresent() ? study.chosen().newtons(counts.getAsDouble()) : Double.NaN);
        json.number(name + "_share", study.ofFullScale(counts));
    }

    private void uncertainty() throws IOException {
        json.begin("expanded_uncertainty");
        json.number("coverage", ExpandedUncertainty.COVERAGE);
        json.texts("leaves_out", study.leavesOut());
        json.list("at", study.uncertainty().atEach(study.steps()), at -> {
            json.number("load_n", at.newtons());
            json.number("plus_minus_n", at.plusMinusNewtons());
            json.number("factor", at.factor());
        });
        json.end();
    }

    private void residuals() throws IOException {
        List<LoadReading> all = study.readings().readings();
        writer.name("residuals").beginArray();
        for (int i = 0; i < all.size(); i++) {
            json.begin();
            json.whole("line", all.get(i).line());
            json.number("load_n", all.get(i).newtons().doubleValue());
            json.number("counts", all.get(i).counts().doubleValue());
            json.text("direction", all.get(i).direction().word());
            json.text("run", all.get(i).run());
            json.number("residual_counts", study.chosen().residuals().get(i));
            json.number("residual_n", study.residualNewtons(i));
            json.end();
        }
        writer.endArray();
    }

    private void exact(String key, double number) throws IOException {
        writer.name(key).jsonValue(digits(number));
    }

    private void exact(String key, List<Double> numbers) throws IOException {
        writer.name(key).beginArray();
        for (double number : numbers) {
            writer.jsonValue(digits(number));
        }
        writer.endArray();
    }

    private static String digits(double number) {
        return Reading.exact(number).toString();
    }
}
