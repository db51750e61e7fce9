package tautlog.desk.gear;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tautlog.desk.drawing.UseDrawings;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.Screen;
import tautlog.rig.Cardan;
import tautlog.rig.Driveline;
import tautlog.usage.DrivelineUse;
import tautlog.usage.Extent;

/** What the shaft has borne, and how its joint makes speed and torque swing. */
public final class DrivelineSection {
    private static final double NANOS = 1e9;

    private final DrivelineUse use;
    private final Optional<Driveline> driveline;
    private final String heading;
    private final String id;

    /** @param id of the drawings: different for every winch of a page, letters and digits */
    DrivelineSection(GearLives.OfWinch winch, String id, boolean withWinch) {
        this(
                winch.driveline(),
                winch.rig().driveline(),
                "Driveline" + (withWinch ? " of " + winch.rig().winch() : ""),
                id);
    }

    public DrivelineSection(DrivelineUse use, Optional<Driveline> driveline, String heading, String id) {
        this.use = use;
        this.driveline = driveline;
        this.heading = heading;
        this.id = id;
    }

    public Document.Section section() {
        List<String> sentences = new ArrayList<>();
        if (use.outings() == 0) {
            sentences.add(
                    "Torque at the shaft is not known: the rig does not describe drum and shaft, or there is no shaft sensor.");
        } else {
            borne(sentences);
        }
        driveline.ifPresent(line -> joint(line, sentences));
        List<Block> blocks = new ArrayList<>(List.of(new Block.Bullets(sentences)));
        UseDrawings.torqueOverSpeed(id + "first", use, UseDrawings.Layer.FIRST, driveline)
                .ifPresent(blocks::add);
        UseDrawings.torqueOverSpeed(id + "last", use, UseDrawings.Layer.LAST, driveline)
                .ifPresent(blocks::add);
        return new Document.Section(heading, blocks);
    }

    private void borne(List<String> sentences) {
        sentences.add(
                "The layer on which the rope runs is not measured: figures stand for the first and the last layer.");
        sentences.add("Greatest torque: " + extent(use.torqueNewtonMetres(), "N m", 0) + rated() + ".");
        sentences.add("Greatest power: " + extent(use.powerKilowatts(), "kW", 1) + ".");
        sentences.add("Torque above the rating while turning: from " + time(use.aboveRatingLeastNanos()) + " to "
                + time(use.aboveRatingMostNanos()) + " (time of unknown tension in the latter).");
        sentences.add("The shaft turned " + time(use.turningNanos()) + ": clutch engaged " + time(use.engagedNanos())
                + ", not known " + time(use.clutchUnknownNanos()) + " (torque at most), not engaged "
                + time(use.disengagedNanos()) + "; tension not known " + time(use.tensionUnknownNanos())
                + ". It stood " + time(use.stillNanos()) + ".");
        if (use.outingsNotDescribed() > 0) {
            sentences.add(
                    "Not in these figures: " + Screen.counted(use.outingsNotDescribed(), "outing")
                            + " whose rig does not describe drum and shaft, without a shaft sensor, or whose readings are gone.");
        }
    }

    private String rated() {
        return driveline
                .map(line -> String.format(
                        Locale.ROOT, "; rated %.0f N m at %.0f rpm", line.ratedTorqueNewtonMetres(), line.ratedRpm()))
                .orElse("");
    }

    private static String extent(Extent extent, String unit, int decimals) {
        if (!extent.seen()) {
            return "not known";
        }
        String number = "%." + decimals + "f";
        String high = String.format(Locale.ROOT, number, extent.high()) + " " + unit;
        if (extent.atLeast()) {
            return high + " or more: a reading was only a lower bound";
        }
        return extent.low() > 0 ? String.format(Locale.ROOT, number, extent.low()) + " to " + high : "at most " + high;
    }

    private static void joint(Driveline line, List<String> sentences) {
        line.jointAngleDegrees().ifPresent(angle -> {
            double least = Cardan.ratio(angle, 90);
            double most = Cardan.ratio(angle, 0);
            sentences.add(String.format(
                    Locale.ROOT,
                    "One joint at %s° makes the speed behind it swing twice a turn by %.1f %%: from %.1f to %.1f rpm at the rated %.0f,"
                            + " and the torque from %.3f to %.3f times. That is no fault; a second joint at the same angle, in phase,"
                            + " evens it out.",
                    BigDecimal.valueOf(angle).stripTrailingZeros().toPlainString(),
                    100 * Cardan.nonUniformity(angle),
                    line.ratedRpm() * least,
                    line.ratedRpm() * most,
                    line.ratedRpm(),
                    least,
                    most));
        });
    }

    private static String time(long nanos) {
        return Screen.length(nanos / NANOS);
    }
}
