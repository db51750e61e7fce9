package tautlog.desk.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.StandingText;
import tautlog.desk.report.JsonFields;
import tautlog.quantity.ForceUnit;

/** Puts a calibration into words, what needs action first. */
public final class CalibrationPage {
    static final String STATIC_ONLY =
            "A static calibration does not prove dynamic accuracy: how the cell, the amplifier and"
                    + " the converter follow a shock it does not say (ASTM E74 is for static force).";

    private final CalibrationStudy study;
    private final ForceUnit unit;

    private CalibrationPage(CalibrationStudy study, ForceUnit unit) {
        this.study = study;
        this.unit = unit;
    }

    /** @param drawings none for a page without */
    public static Document of(CalibrationStudy study, ForceUnit unit, List<Block.Figure> drawings) {
        return new CalibrationPage(study, unit).document(drawings);
    }

    /** That of the readings, where screens show it. */
    public static ForceUnit unit(CalibrationStudy study) {
        ForceUnit first = study.readings().units().get(0);
        return first == ForceUnit.KG
                ? ForceUnit.KGF
                : first == ForceUnit.LB ? ForceUnit.LBF : ForceUnit.ON_SCREEN.contains(first) ? first : ForceUnit.KN;
    }

    private Document document(List<Block.Figure> drawings) {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(new Document.Section("Before you use it", notices()));
        sections.add(new Document.Section("The response", List.of(new Block.Bullets(response()))));
        sections.add(new Document.Section("How good it is", List.of(new Block.Bullets(quality()))));
        if (!drawings.isEmpty()) {
            sections.add(new Document.Section("Drawn", List.copyOf(drawings)));
        }
        sections.add(uncertainty());
        sections.add(new Document.Section("Every reading", List.of(readings())));
        sections.add(new Document.Section(StandingText.HEADING, List.of(new Block.Bullets(StandingText.sentences()))));
        return new Document("Calibration of a load cell", subtitle(), "", sections);
    }

    private List<String> subtitle() {
        return List.of(
                study.readings().file() + ": " + study.readings().readings().size() + " readings at "
                        + study.steps().size() + " loads, " + unit.format(study.leastNewtons()) + " to "
                        + unit.format(study.greatestNewtons()),
                study.calibratedAt()
                        .map(at -> "Taken until "
                                + JsonFields.time(at).substring(0, 16).replace('T', ' ') + " UTC")
                        .orElse("Nobody said when they were taken."));
    }

    private List<Block> notices() {
        List<Block> notices = new ArrayList<>();
        study.cautions().forEach(caution -> notices.add(caution.notice()));
        return notices;
    }

    private List<String> response() {
        List<Double> b = study.chosen().fit().coefficients();
        String curve = study.degree() == 2 ? " + b2 F²" : "";
        List<String> bullets = new ArrayList<>();
        bullets.add(
                (study.degree() == 1 ? "Straight line" : "Curve") + ": counts = b0 + b1 F" + curve + ", F in newtons.");
        bullets.add("b0 " + coefficient(0) + " counts, b1 " + coefficient(1) + " counts/N"
                + (study.degree() == 2 ? ", b2 " + coefficient(2) + " counts/N²" : "")
                + " (± standard deviation); one count is "
                + Digits.three(1 / b.get(1)) + " N.");
        bullets.add(study.choice().because());
        study.shuntStepCounts()
                .ifPresent(step -> bullets.add("The shunt resistor raised the counts by " + step.toPlainString()
                        + ", as " + Digits.five(study.chosen().newtons(step.doubleValue())) + " N do."));
        return bullets;
    }

    private String coefficient(int power) {
        ResponseFit fit = study.chosen().fit();
        return Digits.seven(fit.coefficients().get(power)) + " ± " + Digits.three(fit.sd(power));
    }

    private List<String> quality() {
        ResponseFit fit = study.chosen().fit();
        Behaviour seen = study.behaviour();
        List<String> bullets = new ArrayList<>();
        bullets.add("Residuals: standard deviation " + both(fit.residualSd()) + " with " + fit.degreesOfFreedom()
                + " degrees of freedom; the greatest is " + both(study.chosen().greatestResidual()) + ".");
        bullets.add("Resolution: the counts step by " + study.resolutionWords()
                + (study.countStep().isSeen()
                        ? ", the greatest step of which all differences are multiples."
                        : ", the least that their last digit allows; no two readings at one load differ, and a coarser step"
                                + " would not show."));
        bullets.add("Lower limit factor (ASTM E74, 2.4 times that standard deviation, never below the resolution): "
                + Digits.five(study.lowerLimitNewtons()) + " N.");
        bullets.add("Repeatability: "
                + share(seen.spreadCounts(), "between runs at one load, at most", "nothing was repeated"));
        bullets.add("Hysteresis: "
                + share(
                        seen.hysteresis()
                                .map(loop -> OptionalDouble.of(loop.counts()))
                                .orElse(OptionalDouble.empty()),
                        "down less up, greatest"
                                + seen.hysteresis()
                                        .map(loop -> " at " + unit.format(loop.newtons()))
                                        .orElse(""),
                        "no load was come to both ways"));
        bullets.add("Zero return: "
                + share(
                        seen.zeroReturnCounts(),
                        "unloaded after less before, greatest",
                        "no run was read unloaded before and after"));
        study.request()
                .referencePercent()
                .ifPresent(percent -> bullets.add("Reference loads: within ± " + percent.toPlainString()
                        + " % of each (k = 2), as given; the readings cannot tell it."));
        bullets.add("R² is " + String.format(java.util.Locale.ROOT, "%.9f", fit.rSquared())
                + "; it is near 1 for a poor fit too and decides nothing here.");
        return bullets;
    }

    private String share(OptionalDouble counts, String words, String why) {
        if (counts.isEmpty()) {
            return "unknown, " + why + ".";
        }
        String full = study.ofFullScale(counts).isPresent()
                ? ", " + Digits.percent(study.ofFullScale(counts).getAsDouble()) + " of full scale"
                : "";
        return words + ", " + both(counts.getAsDouble()) + full + ".";
    }

    private String both(double counts) {
        return Digits.three(counts) + " counts (" + Digits.three(study.chosen().newtons(counts)) + " N)";
    }

    private Document.Section uncertainty() {
        List<ExpandedUncertainty.At> all = study.uncertainty().atEach(study.steps());
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            rows.add(row(study.steps().get(i), all.get(i)));
        }
        Block.Table table = new Block.Table(
                "Expanded uncertainty of one steady reading, 95 %",
                List.of(
                        Block.Column.right("load"),
                        Block.Column.right("± N"),
                        Block.Column.right("± % of it"),
                        Block.Column.right("times")),
                rows);
        String out = "Left out, for the readings do not tell it: " + String.join("; ", study.leavesOut()) + ".";
        Optional<ExpandedUncertainty.At> worst = ExpandedUncertainty.greatest(all);
        String words = worst.map(at -> "A steady load is within ± " + Digits.three(at.plusMinusNewtons())
                        + " N of what is shown at the worst of these loads, 95 times in a hundred, as far as the readings tell. "
                        + STATIC_ONLY)
                .orElse("");
        return new Document.Section(
                "How far a reading may be off", List.of(new Block.Paragraph(words), table, new Block.Paragraph(out)));
    }

    private static List<String> row(LoadStep step, ExpandedUncertainty.At at) {
        return List.of(
                step.readings().get(0).written(),
                Digits.three(at.plusMinusNewtons()),
                at.share().isPresent() ? Digits.three(at.share().getAsDouble() * 100) : "–",
                Digits.three(at.factor()));
    }

    private Block.Table readings() {
        List<List<String>> rows = new ArrayList<>();
        List<LoadReading> all = study.readings().readings();
        for (int i = 0; i < all.size(); i++) {
            LoadReading reading = all.get(i);
            rows.add(List.of(
                    String.valueOf(reading.line()),
                    reading.written(),
                    reading.direction().word(),
                    reading.run(),
                    reading.counts().toPlainString(),
                    Digits.signed(study.chosen().residuals().get(i)),
                    Digits.signed(study.residualNewtons(i))));
        }
        return new Block.Table(
                "Readings and residuals: counts of the reading less those of the fit",
                List.of(
                        Block.Column.right("line"),
                        Block.Column.right("load"),
                        Block.Column.left("way"),
                        Block.Column.left("run"),
                        Block.Column.right("counts"),
                        Block.Column.right("residual, counts"),
                        Block.Column.right("N")),
                rows);
    }
}
