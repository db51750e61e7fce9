package tautlog.desk.planning;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.StandingText;
import tautlog.plan.Friction;
import tautlog.plan.GreenLog;
import tautlog.plan.Haul;
import tautlog.plan.Interval;
import tautlog.plan.Slope;
import tautlog.quantity.ForceUnit;
import tautlog.quantity.Length;

/** A plan as a page: the log and its pull, each hookup, what the figures rest on, what they do not know. */
final class PlanPage {
    private final PullPlan plan;
    private final Haul haul;
    private final ForceUnit unit;

    PlanPage(PullPlan plan, ForceUnit unit) {
        this.plan = plan;
        this.haul = plan.request().haul();
        this.unit = unit;
    }

    Document document() {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(new Document.Section("The pull it takes to skid the log", expected()));
        for (int i = 0; i < plan.pulls().size(); i++) {
            sections.add(new PlannedSection(plan.rig(), plan.pulls().get(i), unit, "h" + (i + 1)).section());
        }
        sections.add(new Document.Section("What this does not know", List.of(new Block.Bullets(PlanWords.unknown()))));
        sections.add(new Document.Section("What the figures rest on", List.of(new Block.Bullets(restOn()))));
        sections.add(new Document.Section(StandingText.HEADING, List.of(new Block.Bullets(StandingText.sentences()))));
        return new Document(
                "Plan of a pull with " + plan.rig().winch(),
                List.of(
                        log(),
                        "Tension is the force in the winch line; the winch pulls "
                                + unit.format(plan.rig().ratedPullNewtons()) + " at most, on the drum's first layer."),
                "",
                sections);
    }

    private String log() {
        GreenLog log = haul.log();
        return "Log: " + log.density().words() + ", " + metres(log.length()) + " long, "
                + log.diameters().all().stream().map(PlanPage::centimetres).collect(Collectors.joining("/"))
                + " cm thick" + (log.diameters().all().size() == 1 ? " in the middle" : "") + ".";
    }

    private List<Block> expected() {
        List<Block> blocks = new ArrayList<>();
        if (haul.mayRun()) {
            blocks.add(new Block.Notice(Block.Tone.ACTION, "may run", PlanWords.mayRun(haul)));
        }
        List<String> sentences = new ArrayList<>();
        GreenLog log = haul.log();
        Interval kilograms = log.kilogramsInterval();
        sentences.add("Volume " + decimals(log.cubicMetres(), 2) + " m³ ("
                + log.diameters().formula() + "), "
                + decimals(log.density().kilogramsPerCubicMetre(), 0) + " kg/m³: " + decimals(log.kilograms(), 0)
                + " kg, give or take a fifth: " + floor(kilograms.low()) + " to " + ceiling(kilograms.high())
                + " kg, which weigh " + forces(log.weightNewtons()) + ".");
        sentences.add("Ground: " + PlanWords.ground(haul.friction()) + ", friction "
                + coefficient(haul.friction().coefficient())
                + (haul.friction().isAssumed() ? ". Nobody said which ground: the widest band is assumed." : "."));
        sentences.add(slope(haul.slope()));
        sentences.add(pull());
        sentences.add("If it hangs up: the winch's full pull, "
                + unit.format(plan.rig().ratedPullNewtons()) + ", whatever was expected.");
        blocks.add(new Block.Bullets(sentences));
        return blocks;
    }

    private static String slope(Slope slope) {
        if (slope.isAssumed()) {
            return "Slope: level. Nobody said otherwise: assumed.";
        }
        Interval degrees = slope.degrees();
        String way = degrees.low() < 0 ? degrees.high() <= 0 ? ", downhill" : "" : ", uphill";
        return "Slope in the direction of the pull: "
                + (degrees.low() == degrees.high()
                        ? decimals(degrees.low(), 1)
                        : decimals(degrees.low(), 1) + " to " + decimals(degrees.high(), 1))
                + "°" + way + ".";
    }

    private String pull() {
        Interval pull = haul.pullNewtons();
        String condition = "Expected pull while it moves at a crawl and nothing is in its way: ";
        if (haul.runs()) {
            return condition + "none can be given, it runs by itself. Up to " + high(-pull.low())
                    + " would have to hold it back.";
        }
        return haul.mayRun()
                ? condition + "up to " + high(pull.high()) + " where the ground holds it; where it does not, it runs."
                : condition + forces(pull) + ".";
    }

    private List<String> restOn() {
        List<String> sentences = new ArrayList<>();
        sentences.add(haul.log().density().source());
        sentences.add("Volume by the formula of " + haul.log().diameters().formula()
                + "; the green weight of a log varies by a fifth either way (Forest Products Laboratory, Technical Note"
                + " 218).");
        sentences.add(friction(haul.friction()));
        sentences.add(
                "Expected pull: weight × (friction × cos slope + sin slope), the least and the greatest over all of"
                        + " the intervals.");
        sentences.add("Limits, loads and breaking loads: tautlog limits; the notes of each hookup stand above.");
        return sentences;
    }

    private static String friction(Friction friction) {
        boolean isBand = friction.ground().isPresent() || friction.isAssumed();
        return (isBand
                        ? "Bands of friction are common practice, no source, of low confidence. "
                        : "The friction is the one that was written. ")
                + "Measurements led Navratil and Skoupy (2002) to conclude that one number cannot be given, only an interval"
                + " that depends on the ground and the log. It never sets a limit.";
    }

    private String forces(Interval newtons) {
        return unit.number(BigDecimal.valueOf(newtons.low()), RoundingMode.FLOOR) + " to " + high(newtons.high());
    }

    private String high(double newtons) {
        return unit.number(BigDecimal.valueOf(newtons), RoundingMode.CEILING) + " " + unit.symbol();
    }

    private static String coefficient(Interval friction) {
        return friction.low() == friction.high()
                ? plain(friction.low())
                : plain(friction.low()) + " to " + plain(friction.high());
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    private static String metres(Length length) {
        return length.millimetres()
                        .movePointLeft(3)
                        .setScale(2, RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .toPlainString()
                + " m";
    }

    private static String centimetres(Length length) {
        return length.millimetres()
                .movePointLeft(1)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String floor(double value) {
        return BigDecimal.valueOf(value).setScale(0, RoundingMode.FLOOR).toPlainString();
    }

    private static String ceiling(double value) {
        return BigDecimal.valueOf(value).setScale(0, RoundingMode.CEILING).toPlainString();
    }

    private static String decimals(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
