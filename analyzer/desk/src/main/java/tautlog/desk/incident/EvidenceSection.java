package tautlog.desk.incident;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tautlog.calibration.FitQuality;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.EventSentences;
import tautlog.desk.page.Screen;
import tautlog.desk.page.TrustSection;
import tautlog.desk.report.JsonReport;

/** What the sensors could not see then, and what the evidence is worth. */
final class EvidenceSection {
    private final Incident incident;
    private final Screen screen;
    private final TrustSection ofAll;

    EvidenceSection(Incident incident, Screen screen) {
        this.incident = incident;
        this.screen = screen;
        ofAll = new TrustSection(incident.report(), screen);
    }

    Document.Section unseen() {
        List<Block> blocks = new ArrayList<>();
        TrustSection.tooSlow(incident.report()).ifPresent(blocks::add);
        incident.outing().ifPresent(outing -> blocks.add(new Block.Bullets(here(outing))));
        blocks.addAll(ofAll.unseen().blocks());
        return new Document.Section("Where the sensors sit and what they could not see", blocks);
    }

    private List<String> here(OutingFacts outing) {
        Readings readings = outing.readings();
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "The tension was read %s times a second, the shaft more seldom: what is shorter than two readings may be missed.",
                plain(outing.rateHertz())));
        lines.add(Screen.counted(readings.samples(), "reading") + " lie in the time looked at, "
                + (readings.endStops() == 0
                        ? "none at the converter's end stop."
                        : readings.endStops()
                                + " of them at the converter's end stop: the true tension was at least that."));
        double missing = readings.gaps().stream()
                .mapToDouble(gap -> gap.toSeconds() - gap.fromSeconds())
                .sum();
        lines.add(
                readings.gaps().isEmpty()
                        ? "No reading is missing in the time looked at."
                        : Screen.counted(readings.gaps().size(), "gap") + " in or at the time looked at, "
                                + Screen.length(missing) + " in all: what happened in them is not known.");
        if (outing.isThinned()) {
            lines.add(
                    "The readings of this outing were taken out because the disk was nearly full: what is told of it is what the"
                            + " logger said on the day.");
        }
        return lines;
    }

    private static String plain(double hertz) {
        return new java.math.BigDecimal(String.format(Locale.ROOT, "%.3f", hertz))
                .stripTrailingZeros()
                .toPlainString();
    }

    Document.Section trust() {
        List<Block> blocks = new ArrayList<>();
        incident.outing().ifPresent(outing -> {
            blocks.add(new Block.Heading("Calibration"));
            blocks.add(new Block.Bullets(calibration(outing.calibration())));
            blocks.add(new Block.Heading("Integrity of this recording"));
            blocks.add(new Block.Bullets(integrity(outing)));
            blocks.add(new Block.Heading("Clock"));
            blocks.add(new Block.Bullets(clock(outing)));
        });
        blocks.add(new Block.Heading("All recordings given"));
        blocks.add(new Block.Bullets(ofAll.bullets()));
        return new Document.Section("How far to trust this", blocks);
    }

    private List<String> calibration(CalibrationFacts facts) {
        List<String> lines = new ArrayList<>();
        lines.add((facts.isOther()
                        ? "WHAT IF: another calibration is used than the one kept in the recording, made from readings of "
                        : "The load cell's calibration is kept in the recording, made from readings of ")
                + facts.calibratedAt().map(screen::date).orElse("a day that is not known")
                + ". Its text has SHA-256 " + facts.fileSha256()
                + ": a file of it that was kept elsewhere is the same if it has the same.");
        lines.add(facts.quality()
                .map(this::quality)
                .orElse("How good it is was never said: only its numbers were written, and no interval can be given."));
        return lines;
    }

    private String quality(FitQuality quality) {
        return "A " + (quality.degree() == 1 ? "straight line" : "curve") + " over reference loads from "
                + screen.force(quality.leastNewtons()) + " to " + screen.force(quality.greatestNewtons())
                + (beyond(quality) ? " (the greatest pull here lies beyond them: nothing was proven there)" : "")
                + String.format(
                        Locale.ROOT,
                        "; its readings scatter by %.3g counts (one standard deviation, %d degrees of freedom)",
                        quality.residualSdCounts(),
                        quality.degreesOfFreedom())
                + (quality.referencePercent().isPresent()
                        ? String.format(
                                Locale.ROOT,
                                "; the reference loads are good to %.3g %% (k = 2)",
                                quality.referencePercent().getAsDouble())
                        : "; how good the reference loads were is not known")
                + "; loads come to: " + JsonReport.word(quality.directions()) + ".";
    }

    private boolean beyond(FitQuality quality) {
        return incident.outing()
                .flatMap(OutingFacts::subject)
                .filter(subject -> subject.peakNewtons() > quality.greatestNewtons())
                .isPresent();
    }

    private static List<String> integrity(OutingFacts outing) {
        Incident.Integrity found = outing.integrity();
        String name = String.valueOf(Path.of(outing.file()).getFileName());
        List<String> lines = new ArrayList<>();
        lines.add(
                found.intact()
                        ? name + " is intact: its checksums, its chain and its structure fit."
                        : name + " IS NOT INTACT: " + Screen.counted(found.damages(), "piece") + " damaged, "
                                + Screen.counted(found.lostOutings(), "outing")
                                + " lost. Run tautlog verify and copy it again from the board.");
        lines.add(
                Screen.counted(found.gaps(), "gap") + " in its sample numbers. Recorded by " + outing.program() + ".");
        lines.add(
                "Its last link: " + found.lastLink()
                        + ". Who can rewrite the file can rewrite its chain: it proves something only against a link kept elsewhere.");
        if (found.kept().isEmpty()) {
            lines.add(
                    "No such link was given (--against). Where one may be kept: last-links.txt on the USB drive that took the"
                            + " recording; the broker's topic tautlog/1/" + outing.winch()
                            + "/link, where the logger publishes.");
        }
        found.kept()
                .forEach(link -> lines.add((link.isContradicted() ? "CONTRADICTED: " : "") + "Kept in " + link.keptIn()
                        + ": " + link.sentence() + "."));
        return lines;
    }

    private static List<String> clock(OutingFacts outing) {
        ClockTrust clock = outing.clock();
        if (clock.looks() == 0) {
            return List.of(
                    "No clock was ever known in this outing: nobody can say on which day it was. Times are seconds from"
                            + " its first reading, by the instrument's own counter.");
        }
        List<String> lines = new ArrayList<>();
        Optional<Double> nearest = clock.nearestSeconds().isPresent()
                ? Optional.of(clock.nearestSeconds().getAsDouble())
                : Optional.empty();
        lines.add("Times are those of the logger's clock, looked at " + EventSentences.times(clock.looks())
                + " in this outing; "
                + nearest.map(seconds -> "the nearest look is " + Screen.length(seconds) + " from the moment asked for")
                        .orElse("none of them counts")
                + ". Between them the instrument's own counter tells the time.");
        if (clock.set() > 0) {
            lines.add("The clock was set in the outing: " + Screen.counted(clock.set(), "look")
                    + " before that were set aside, and all of the outing is dated from those after it.");
        }
        lines.add(
                "Whether the logger's clock was right is not recorded; times are late by the line's delay, commonly some"
                        + " milliseconds (the latest look here: by " + Screen.length(clock.greatestLateSeconds())
                        + "). Lengths of time within the outing do not depend on it.");
        return lines;
    }
}
