package tautlog.desk.analysis;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tautlog.rig.Cell;
import tautlog.rig.CellPlace;
import tautlog.rig.Rig;

/** What the cell at its place, and the shaft sensor at its end, cannot see. */
final class BlindSpots {
    private static final String DEAD_END =
            " A sheave lies between the cell and the drum: while the winch pulls, the drum's side of"
                    + " the line carries more than every tension given here, by the sheave's friction (common practice: 2 to 10 %"
                    + " for each sheave). No tension and no interval here holds it; the loads of gear count 4 % for each sheave.";

    /** Half of what the two sides differ by, 4 % on rolling bearings and 9 % on plain ones: {@code firmware-notes/cell.md}, Friction. */
    private static final String AT_A_SHEAVE =
            " The cell carries the sum of both sides of a sheave, and every tension given here lies between the two: while the winch"
                    + " pulls, the drum's side of the line carries about 2 to 4.5 % more, by the sheave's friction (4 % between the"
                    + " sides on rolling bearings, 9 % on plain ones; other sources say 2 to 10 %). No tension and no interval here"
                    + " holds it.";

    private final List<Rig> rigs;

    BlindSpots(List<Rig> rigs) {
        this.rigs = rigs;
    }

    List<String> sentences() {
        Set<String> sentences = new LinkedHashSet<>();
        for (Rig rig : rigs) {
            sentences.add(cell(rig));
            sentences.add(shaft(rig));
        }
        return List.copyOf(sentences);
    }

    private static String cell(Rig rig) {
        if (rig.cell().isEmpty()) {
            return "The rig does not say where the load cell sits: it is taken to hang in the line.";
        }
        Cell cell = rig.cell().get();
        if (cell.at() == CellPlace.LINE) {
            return "The load cell hangs in the line: what acts beyond it, friction at a block or on the ground, is not"
                    + " told apart.";
        }
        String sentence = "The load cell sits at the " + cell.at().word() + " and is blind to "
                + cell.at().blindTo() + ".";
        if (cell.at() == CellPlace.DEAD_END) {
            return sentence + DEAD_END;
        }
        return sentence + AT_A_SHEAVE + angle(cell);
    }

    private static String angle(Cell cell) {
        if (cell.isAngleUnbounded()) {
            return " How far the angle there may be off is not written (angle_plus_minus_deg): every tension is"
                    + " off with it, by how much is not known.";
        }
        return cell.angleUncertainty() > 0
                ? " The angle there alone makes the tension uncertain by "
                        + Math.round(cell.angleUncertainty() * 1000) / 10.0 + " %."
                : "";
    }

    private static String shaft(Rig rig) {
        return rig.sensorAt()
                .map(end -> "The speed sensor sees the " + end.word()
                        + "'s end of the shaft: a slip or a parted joint beyond" + " it is not seen.")
                .orElse("The rig does not say which end of the shaft carries the speed sensor.");
    }
}
