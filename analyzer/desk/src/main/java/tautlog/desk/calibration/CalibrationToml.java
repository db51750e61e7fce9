package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import tautlog.calibration.Directions;
import tautlog.calibration.FitQuality;
import tautlog.config.Reading;
import tautlog.desk.report.JsonFields;

/**
 * Writes a {@code calibration.toml}: the numbers that a logger and the desk read back to the last digit, and as remarks what
 * a person should know who opens it.
 */
public final class CalibrationToml {
    private static final int WIDTH = 110;
    /** Chosen: a number with more characters is written with an exponent. */
    private static final int LONGEST = 30;

    private final CalibrationStudy study;
    private final StringBuilder out = new StringBuilder();

    private CalibrationToml(CalibrationStudy study) {
        this.study = study;
    }

    /** The file's text. */
    public static String render(CalibrationStudy study) {
        return new CalibrationToml(study).text();
    }

    private String text() {
        remark("Calibration of a load cell, written by `tautlog calibrate` from "
                + name(study.readings().file()) + ": "
                + study.readings().readings().size() + " readings at "
                + study.steps().size() + " loads.");
        remark(study.choice().because());
        remark("A static calibration does not prove dynamic accuracy.");
        for (Caution caution : study.cautions()) {
            remark(caution.label() + ": " + caution.text());
        }
        out.append("schema = 1\n");
        response();
        study.calibratedAt()
                .ifPresent(at -> out.append("calibrated_at = ")
                        .append(JsonFields.time(at))
                        .append('\n'));
        study.shuntStepCounts().ifPresent(step -> number("shunt_step_counts", step));
        quality(study.quality());
        return out.toString();
    }

    private void response() {
        remark(
                study.degree() == 1
                        ? "counts = b0 + b1 * F, F in newtons"
                        : "counts = b0 + b1 * F + b2 * F^2, F in newtons");
        List<Double> b = study.chosen().fit().coefficients();
        number("b0_counts", b.get(0));
        number("b1_counts_per_newton", b.get(1));
        if (study.degree() == 2) {
            number("b2_counts_per_newton2", b.get(2));
        }
    }

    private void quality(FitQuality quality) {
        out.append("\n[fit]\n");
        number("residual_sd_counts", quality.residualSdCounts());
        number("resolution_counts", study.countStep().counts());
        out.append("degrees_of_freedom = ").append(quality.degreesOfFreedom()).append('\n');
        number("least_load_n", quality.leastNewtons());
        number("greatest_load_n", quality.greatestNewtons());
        study.request().referencePercent().ifPresent(percent -> number("reference_percent", percent));
        if (quality.directions() != Directions.UNKNOWN) {
            out.append("directions = \"").append(quality.directions().word()).append("\"\n");
        }
        out.append("\n[fit.covariance]\n");
        int n = study.degree() + 1;
        for (int row = 0; row < n; row++) {
            for (int column = row; column < n; column++) {
                number("b" + row + "_b" + column, quality.covariance().get(row * n + column));
            }
        }
    }

    private void number(String key, double value) {
        number(key, Reading.exact(value));
    }

    /** A decimal of TOML where that keeps every digit, else in quotes. */
    private void number(String key, BigDecimal value) {
        String plain = value.toPlainString();
        String text = plain.length() <= LONGEST ? plain : value.toString().toLowerCase(Locale.ROOT);
        String decimal = text.contains(".") || text.contains("e") ? text : text + ".0";
        boolean kept = Reading.exact(Double.parseDouble(decimal)).compareTo(value) == 0;
        out.append(key).append(" = ").append(kept ? decimal : '"' + text + '"').append('\n');
    }

    private void remark(String sentences) {
        StringBuilder line = new StringBuilder("#");
        for (String word : plain(sentences).split(" ", -1)) {
            if (line.length() > 1 && line.length() + 1 + word.length() > WIDTH) {
                out.append(line).append('\n');
                line = new StringBuilder("#  ");
            }
            line.append(' ').append(word);
        }
        out.append(line).append('\n');
    }

    /** Without its folders: they tell the reader of a recording nothing. */
    private static String name(String file) {
        return file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    }

    /** A remark of TOML ends with its line and holds no control character. */
    private static String plain(String text) {
        return text.replaceAll("\\p{Cntrl}", "?");
    }
}
