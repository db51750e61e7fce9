package tautlog.desk.gear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.OverloadedGear;
import tautlog.rig.Band;

/** What nobody may use in one line, for a page that is about something else. */
public final class OutOnTop {
    private OutOnTop() {}

    /**
     * Gear that is out, the worst band first, then what may have been overloaded.
     *
     * @param withWinch gear of several winches is told apart
     * @return empty when nothing is known against any; that says nothing of its state
     */
    public static Optional<Document.Section> section(List<GearLife> lives, boolean withWinch) {
        List<Block> blocks = new ArrayList<>();
        String out = lives.stream()
                .filter(life -> life.out().findAny().isPresent())
                .sorted(Comparator.comparing(OutOnTop::rank).reversed())
                .map(life -> life.name(withWinch) + " (" + why(life) + ")")
                .collect(Collectors.joining(", "));
        if (!out.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.ACTION, "Out of service", out + ". Nobody may use it; see tautlog service gear."));
        }
        String doubtful = lives.stream()
                .filter(life -> life.toInspect().findAny().isPresent())
                .map(life -> life.name(withWinch))
                .collect(Collectors.joining(", "));
        if (!doubtful.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.CAUTION, "May be overloaded", doubtful + ". Inspect it; see tautlog service gear."));
        }
        return blocks.isEmpty() ? Optional.empty() : Optional.of(new Document.Section(OverloadedGear.HEADING, blocks));
    }

    private static int rank(GearLife life) {
        return worst(life).map(Band::ordinal).orElse(-1);
    }

    private static Optional<Band> worst(GearLife life) {
        return life.out().flatMap(piece -> piece.worst().stream()).max(Comparator.naturalOrder());
    }

    private static String why(GearLife life) {
        if (life.out().anyMatch(piece -> piece.standing() == Standing.SCRAP)) {
            return Standing.SCRAP.word();
        }
        return worst(life).map(Band::word).orElse("taken out");
    }
}
