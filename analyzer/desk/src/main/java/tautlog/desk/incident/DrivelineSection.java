package tautlog.desk.incident;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.detect.Known;

/** What the shaft bore and how fast it turned at the greatest pull. */
final class DrivelineSection {
    private final OutingFacts outing;

    DrivelineSection(OutingFacts outing) {
        this.outing = outing;
    }

    Document.Section section() {
        List<String> lines = new ArrayList<>();
        OptionalDouble rpm = outing.readings().subject().rpm();
        if (outing.subject().isPresent()) {
            lines.add(
                    rpm.isPresent()
                            ? number("Shaft speed at the greatest pull: %.0f rpm.", rpm.getAsDouble())
                            : "Shaft speed at the greatest pull: not known, no reading in the second before.");
            lines.add("Clutch: " + said(outing.readings().subject().clutch(), "engaged", "not engaged") + ". Brake: "
                    + said(outing.readings().subject().brake(), "on", "not on") + ".");
        }
        lines.addAll(outing.driveline().map(DrivelineSection::torque).orElseGet(() -> List.of(unknown())));
        return new Document.Section("Driveline", List.of(new Block.Bullets(lines)));
    }

    private static String said(Known known, String yes, String no) {
        return switch (known) {
            case YES -> yes;
            case NO -> no;
            case UNKNOWN -> "not known";
        };
    }

    private String unknown() {
        return outing.hasDriveline()
                ? "Torque: nothing was pulled in the time looked at."
                : "Torque: not known, the rig does not describe drum and shaft.";
    }

    private static List<String> torque(DrivelineLoad load) {
        List<String> lines = new ArrayList<>();
        if (load.clutch() == Known.NO) {
            lines.add("The clutch was said not to be engaged: the shaft need not have borne the pull. Had it been:");
        }
        String layers = load.layers() == 1
                ? ""
                : number(" On which of the %d layers the rope ran is not known: all are in it.", load.layers());
        lines.add(between(load)
                + number("; rated %.0f N·m.", load.ratedNewtonMetres())
                + layers
                + (load.tensionIsBounded() ? "" : " How far the pull itself may be off is not known and not in it.")
                + (load.clutch() == Known.UNKNOWN ? " At most, because the clutch is not known." : ""));
        lines.add(
                load.kilowatts().isPresent()
                        ? "Power: at most " + up(load.kilowatts().getAsDouble(), 1) + " kW."
                        : "Power: not known.");
        lines.add(
                "The model is drum, ratio and efficiency as the rig writes them; shocks in the driveline itself are not seen.");
        return lines;
    }

    private static String between(DrivelineLoad load) {
        if (load.greatestNewtonMetres().isEmpty()) {
            return load.isAtMost()
                    ? "Torque at the shaft: not known"
                    : "Torque at the shaft: " + down(load.leastNewtonMetres()) + " N·m or more";
        }
        double greatest = load.greatestNewtonMetres().getAsDouble();
        return load.isAtMost()
                ? "Torque at the shaft: at most " + up(greatest, 0) + " N·m"
                : "Torque at the shaft: " + down(load.leastNewtonMetres()) + " to " + up(greatest, 0) + " N·m";
    }

    /** A bound is never printed inside itself. */
    private static String up(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.CEILING)
                .toPlainString();
    }

    private static String down(double value) {
        return BigDecimal.valueOf(value).setScale(0, RoundingMode.FLOOR).toPlainString();
    }

    private static String number(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
