package tautlog.desk.page;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Report;
import tautlog.detect.Finding.TroubleKind;

/** How far the figures can be trusted, and what the sensors cannot see. */
public final class TrustSection {
    /**
     * Chosen: below it a rise of 0.04 s has fewer than the four samples that {@code FINDINGS.md} asks of a resolved shock;
     * snaps of a log on some ten metres of wire rope rise in 0.03 to 0.13 s (a quarter period of mass on line stiffness).
     */
    static final double TOO_SLOW_BELOW_HERTZ = 100;

    private final Report report;
    private final Screen screen;

    public TrustSection(Report report, Screen screen) {
        this.report = report;
        this.screen = screen;
    }

    /** The warning that an instrument cannot see shocks as they are; empty when rate and shocks give no reason. */
    public static Optional<Block> tooSlow(Report report) {
        List<String> rates = report.recordings().stream()
                .map(Report.Source::rateHertz)
                .filter(rate -> rate < TOO_SLOW_BELOW_HERTZ)
                .distinct()
                .map(TrustSection::rate)
                .toList();
        List<String> unresolved = unresolved(report);
        if (rates.isEmpty() && unresolved.isEmpty()) {
            return Optional.empty();
        }
        String why = rates.isEmpty()
                ? Screen.listed(unresolved) + " rose in too few readings"
                : Screen.listed(rates) + " readings a second";
        return Optional.of(new Block.Notice(
                Block.Tone.CAUTION,
                "Too slow for shocks",
                why
                        + ": this instrument is too slow for shocks. Shocks and jolts may be missing here, and the true peak of"
                        + " those found may have been much higher."));
    }

    private static List<String> unresolved(Report report) {
        long shocks =
                report.shocks().stream().filter(shock -> !shock.resolved()).count();
        long jolts = report.jolts().stream().filter(jolt -> !jolt.resolved()).count();
        return Stream.of(
                        shocks == 0 ? "" : Screen.counted(shocks, "shock"),
                        jolts == 0 ? "" : Screen.counted(jolts, "jolt"))
                .filter(counted -> !counted.isEmpty())
                .toList();
    }

    private static String rate(double hertz) {
        return new BigDecimal(String.format(Locale.ROOT, "%.3f", hertz))
                .stripTrailingZeros()
                .toPlainString();
    }

    Document.Section section() {
        List<Block> blocks = new ArrayList<>();
        List<String> facts = new ArrayList<>(bullets());
        if (tooSlow(report).isPresent()) {
            facts.add("Too slow for shocks: see \"What happened\".");
        }
        blocks.add(new Block.Bullets(facts));
        blocks.addAll(
                Shortened.bullets(report.trouble().stream().map(this::trouble).toList()));
        return new Document.Section("How far to trust this", blocks);
    }

    /** One fact each. */
    public List<String> bullets() {
        Report.Trust trust = report.trust();
        List<String> bullets = new ArrayList<>(report.notes());
        if (report.recordings().isEmpty()) {
            bullets.add("No outing was read: nothing here says that anything was in order.");
            return bullets;
        }
        if (report.recordings().stream().anyMatch(Report.Source::imported)) {
            bullets.add("Readings were imported: logged elsewhere, without counts of our own and without a chain of"
                    + " evidence before the import. Their forces are taken to be the line's tension as they were logged,"
                    + " wherever the rig says that the cell sits.");
        }
        bullets.add(gaps(trust));
        bullets.add(RejectedWords.of(trust));
        bullets.add(
                Screen.counted(trust.heldFrames(), "frame") + " lost because the instrument had not introduced itself, "
                        + Screen.counted(trust.repeatedFrames(), "frame") + " dropped as repeated.");
        bullets.add(
                trust.endStopSamples() == 0
                        ? "No reading was at the converter's end stop."
                        : Screen.counted(trust.endStopSamples(), "reading")
                                + " at the converter's end stop; each is only a bound.");
        bullets.add(zero(trust.zero()));
        bullets.add(chain(trust));
        bullets.add(live(trust));
        bullets.add(trust.calibratedAt()
                        .map(at -> "The load cell was calibrated on " + screen.date(at) + ".")
                        .orElse("When the load cell was calibrated is not known.")
                + " A static calibration does not prove dynamic accuracy.");
        bullets.add(new IntervalWords(report).sentence());
        return bullets;
    }

    private String zero(Report.Zero zero) {
        String moved = zero.moves() == 0
                ? "The zero was nowhere moved from where the calibration put it."
                : "The zero was moved " + zero.moves() + (zero.moves() == 1 ? " time" : " times")
                        + " in slack, at most by " + screen.force(zero.greatestShiftNewtons()) + ".";
        if (zero.proven()) {
            return moved + " Slack was proven after a pull, or the mark button held, in every outing.";
        }
        return moved + " ZERO UNPROVEN in " + zero.unproven() + " of " + zero.outings()
                + " outings: no slack was seen in"
                + " them that would prove it, and every tension may be off by as much as the zero is.";
    }

    private static String gaps(Report.Trust trust) {
        return trust.gaps() == 0
                ? "No reading number is missing between first and last."
                : Screen.counted(trust.gaps(), "gap") + ", " + Screen.length(trust.gapSeconds())
                        + " in all: what happened in them is not known.";
    }

    private static String chain(Report.Trust trust) {
        String state = trust.chainIntact()
                .map(intact -> intact
                        ? "The chain of evidence is intact"
                        : "THE CHAIN OF EVIDENCE IS BROKEN: run tautlog verify and trust nothing behind the break")
                .orElse("The chain of evidence was not walked");
        String link = trust.lastLink().map(last -> "; last link " + last).orElse("");
        return state + link + ". It proves something only against a link that was kept elsewhere.";
    }

    private String live(Report.Trust trust) {
        if (trust.liveFindingsAgree().isPresent()) {
            return trust.liveFindingsAgree().get()
                    ? "What the logger said on the day (every finding, every second) is, field by field, what its"
                            + " readings give now."
                    : "WHAT THE LOGGER SAID ON THE DAY IS NOT WHAT ITS READINGS GIVE NOW: findings or seconds in the"
                            + " file, the readings, rig or calibration were changed later, or logger and this program are of different"
                            + " versions. This report tells what the readings give. Run tautlog verify and keep the file"
                            + " as it is.";
        }
        return "Whether the logger said the same on the day is not known: "
                + (report.whatIf().isEmpty()
                        ? "nothing was said then (imported readings), readings are damaged, or the outing still goes on."
                        : "another rig, calibration or hookup is used here than on the day.");
    }

    private String trouble(Entry.Trouble trouble) {
        double seconds = trouble.end().seconds() - trouble.start().seconds();
        String length = trouble.trouble() == TroubleKind.ONE_SAMPLE_PEAK || seconds <= 0
                ? ""
                : ", for " + Screen.length(seconds);
        return screen.preciseTime(trouble.start()) + " Sensor: " + TroubleWords.of(trouble.trouble()) + length + ".";
    }

    /** What no figure here tells. */
    public Document.Section unseen() {
        List<String> bullets = new ArrayList<>(report.blindSpots());
        bullets.add("Loads of logs hung on the winch's frame while driving are not seen.");
        bullets.add("Nothing is seen of wear, broken wires, kinks, corrosion or damage of gear.");
        bullets.add("Which of several identical pieces was on is not known: all of them count as loaded.");
        bullets.add("How several chokers on one line shared the load is not known: each is taken to carry all of it.");
        return new Document.Section("What the sensors cannot see", List.of(new Block.Bullets(bullets)));
    }
}
