package tautlog.desk.limits;

import java.util.ArrayList;
import java.util.List;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.StandingText;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Cell;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/** The limits of a rig as a page: one section for each hookup, then the load cell and the standing text. */
final class LimitsPage {
    private final Rig rig;
    private final ForceUnit unit;

    LimitsPage(Rig rig, ForceUnit unit) {
        this.rig = rig;
        this.unit = unit;
    }

    Document document(List<Hookup> hookups) {
        List<Document.Section> sections = new ArrayList<>();
        hookups.forEach(hookup -> sections.add(new HookupSection(rig, hookup, unit).section()));
        sections.add(cell());
        sections.add(new Document.Section(StandingText.HEADING, List.of(new Block.Bullets(StandingText.sentences()))));
        List<String> subtitle = List.of("Tension is the force in the winch line; the winch pulls "
                + unit.format(rig.ratedPullNewtons()) + " at most, on the drum's first layer.");
        return new Document("Limits of " + rig.winch(), subtitle, "", sections);
    }

    private Document.Section cell() {
        List<String> sentences = new ArrayList<>();
        rig.cell()
                .ifPresentOrElse(
                        cell -> describe(cell, sentences),
                        () -> sentences.add(
                                "The rig does not speak of the load cell: it is taken to hang in the line. Its own rating is unknown."));
        sentences.add("Loads of logs hung on the winch's frame while driving are not seen.");
        return new Document.Section("The load cell", List.of(new Block.Bullets(sentences)));
    }

    private void describe(Cell cell, List<String> sentences) {
        sentences.add("It sits at: " + cell.at().word() + ". It is blind to "
                + cell.at().blindTo() + ".");
        sentences.add(rig.cellCapacityNewtons()
                .map(tension -> "It reaches its own rating at a tension of " + unit.format(tension)
                        + "; beyond, a reading is \"at least\".")
                .orElse("Its own rating is not written: nobody can say from where on a reading is too low."));
        cell.betweenLines()
                .ifPresent(angle -> sentences.add("Tension is its reading / "
                        + Figures.multiple(cell.readingPerTension()) + ", for "
                        + angle.degrees().toPlainString()
                        + " degrees between the lines" + uncertainty(cell) + "."));
    }

    private static String uncertainty(Cell cell) {
        return cell.betweenLinesPlusMinus()
                .map(off -> "; ± " + off.degrees().toPlainString() + " degrees make up to "
                        + Figures.percent(cell.angleUncertainty()) + " of it uncertain")
                .orElse("; how far that angle may be off is not written");
    }
}
