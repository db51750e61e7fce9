package tautlog.rig;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.config.ConfigException;
import tautlog.quantity.ForceUnit;

/**
 * The winch, its gear and hookups, as {@code rig.toml} says.
 *
 * @param winch name of the winch
 * @param ratedPullNewtons the winch's full pull on the first layer
 * @param hookups one or more
 * @param detect settings of the detectors
 * @param cellCapacityNewtons the line's tension at which the load cell reaches its own rating; beyond it a reading is "at
 *     least"
 * @param driveline empty when the rig does not describe drum and shaft
 * @param units what screens show
 * @param gear every piece, in the order of the rig
 * @param cell empty when the rig does not speak of the load cell: then it is taken to hang in the line
 * @param sensorAt which end of the driveline the speed sensor sees; empty when the rig does not say
 * @param opening what the winch had done before the first recording
 */
public record Rig(
        String winch,
        BigDecimal ratedPullNewtons,
        List<Hookup> hookups,
        DetectSettings detect,
        Optional<BigDecimal> cellCapacityNewtons,
        Optional<Driveline> driveline,
        ForceUnit units,
        List<Gear> gear,
        Optional<Cell> cell,
        Optional<ShaftEnd> sensorAt,
        Opening opening) {
    public Rig {
        hookups = List.copyOf(hookups);
        gear = List.copyOf(gear);
    }

    /** A rig without anything that only reports need. */
    public Rig(
            String winch,
            BigDecimal ratedPullNewtons,
            List<Hookup> hookups,
            DetectSettings detect,
            Optional<BigDecimal> cellCapacityNewtons,
            Optional<Driveline> driveline) {
        this(
                winch,
                ratedPullNewtons,
                hookups,
                detect,
                cellCapacityNewtons,
                driveline,
                ForceUnit.KN,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Opening.NONE);
    }

    /**
     * Reads a rig.
     *
     * @param fileName the name that messages show; nothing is opened
     * @param toml the text of the file
     * @throws ConfigException with every problem of the text, if there is one
     */
    public static Rig parse(String fileName, String toml) throws ConfigException {
        return RigFile.parse(fileName, toml);
    }

    public Optional<Hookup> hookup(String id) {
        return hookups.stream().filter(h -> h.id().equals(id)).findFirst();
    }

    public Optional<Hookup> bySelector(int position) {
        return hookups.stream()
                .filter(h -> h.selector().isPresent() && h.selector().getAsInt() == position)
                .findFirst();
    }

    /** The hookup when nobody said which is on: the rig's default, else the one with the lowest limit. */
    public Hookup assumed() {
        return hookups.stream().filter(Hookup::isDefault).findFirst().orElseGet(this::lowest);
    }

    /** The hookup with the lowest limit, of equals the first listed: what an id that this rig does not know counts as. */
    public Hookup lowest() {
        return hookups.stream()
                .min(Comparator.comparing(h -> h.limit().newtons()))
                .orElseThrow();
    }
}
