package tautlog.rig;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.config.ConfigTable;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.quantity.Length;
import tautlog.quantity.Torque;

/** Reads the drum, the shaft's rating and the joint of {@code [winch]}. */
final class DrivelineReader {
    private static final Reading<BigDecimal> ABOVE_ZERO = Reading.decimal(Range.aboveZeroTo("10000"));
    private static final Reading<BigDecimal> JOINT_ANGLE = Reading.decimal(Range.between("0", "60"));

    private record Shaft(BigDecimal rpm, Torque torque) {}

    private record Drum(Length barrel, int layers, BigDecimal ratio, BigDecimal efficiency) {}

    private record Joint(BigDecimal angle, BigDecimal rated) {}

    private final ConfigTable winch;

    DrivelineReader(ConfigTable winch) {
        this.winch = winch;
    }

    /**
     * The driveline; empty when drum or shaft rating are not written, or wrong. The rope's diameter is the greatest of the
     * gear of kind rope that can be the winch's line.
     */
    Optional<Driveline> read(Collection<GearEntry> gear) {
        Optional<Shaft> shaft = winch.table("shaft_rated").flatMap(DrivelineReader::shaft);
        Optional<Drum> drum = winch.table("drum").flatMap(DrivelineReader::drum);
        Optional<Joint> joint = winch.table("joint").flatMap(DrivelineReader::joint);
        if (drum.isEmpty()) {
            return Optional.empty();
        }
        Optional<Length> rope = ropeDiameter(gear);
        if (rope.isEmpty()) {
            winch.problem(
                    "drum", "the rope on it has no diameter", "Write diameter = \"11 mm\" for the gear of kind rope.");
        }
        if (shaft.isEmpty() || rope.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(build(shaft.get(), drum.get(), joint, rope.get()));
    }

    private static Driveline build(Shaft shaft, Drum drum, Optional<Joint> joint, Length rope) {
        return new Driveline(
                drum.barrel().metres() / 2,
                rope.metres(),
                drum.layers(),
                drum.ratio().doubleValue(),
                drum.efficiency().doubleValue(),
                shaft.torque().newtonMetres().doubleValue(),
                shaft.rpm().doubleValue(),
                joint.map(j -> OptionalDouble.of(j.angle().doubleValue())).orElse(OptionalDouble.empty()),
                joint.map(j -> OptionalDouble.of(j.rated().doubleValue())).orElse(OptionalDouble.empty()));
    }

    private static Optional<Length> ropeDiameter(Collection<GearEntry> gear) {
        return gear.stream()
                .filter(entry -> entry.kind() == GearKind.ROPE)
                .flatMap(entry -> entry.size().stream())
                .max(Comparator.comparing(Length::millimetres));
    }

    private static Optional<Shaft> shaft(ConfigTable table) {
        Optional<BigDecimal> rpm = table.required("speed_rpm", ABOVE_ZERO);
        Optional<Torque> torque = table.required("torque", Reading.torque());
        return rpm.isPresent() && torque.isPresent()
                ? Optional.of(new Shaft(rpm.get(), torque.get()))
                : Optional.empty();
    }

    private static Optional<Drum> drum(ConfigTable table) {
        Optional<Length> barrel = table.required("barrel_diameter", Reading.length());
        Optional<Integer> layers = table.required("layers", Reading.whole(1, 100));
        Optional<BigDecimal> ratio = table.required("ratio", ABOVE_ZERO);
        Optional<BigDecimal> efficiency = table.required("efficiency", Reading.decimal(Range.aboveZeroTo("1")));
        return barrel.isPresent() && layers.isPresent() && ratio.isPresent() && efficiency.isPresent()
                ? Optional.of(new Drum(barrel.get(), layers.get(), ratio.get(), efficiency.get()))
                : Optional.empty();
    }

    private static Optional<Joint> joint(ConfigTable table) {
        Optional<BigDecimal> angle = table.required("angle_deg", JOINT_ANGLE);
        Optional<BigDecimal> rated = table.required("rated_angle_deg", Reading.decimal(Range.aboveZeroTo("60")));
        return angle.isPresent() && rated.isPresent()
                ? Optional.of(new Joint(angle.get(), rated.get()))
                : Optional.empty();
    }
}
