package tautlog.logger.simulate;

import java.util.List;
import tautlog.logger.simulate.physics.Drum;
import tautlog.logger.simulate.physics.Engine;
import tautlog.logger.simulate.physics.Part;
import tautlog.logger.simulate.physics.Rigging;

/**
 * The winch, tractor and hookups of {@code samples/rig.toml}, as physical things. A test keeps the two in step.
 *
 * <p>A part's strength is its breaking load in the rig. Rope: EA = 5.6 MN for 11 mm 6x36 IWRC (E = 14e6 psi on the metallic
 * area, Wire Rope Users Manual, from memory; sources differ by 20 %). Chain: EA = 0.854e8 d² kN (studless link chain,
 * mooring-line manuals, from memory), 8 mm: 5.47 MN, 7 mm: 4.18 MN. Web strap: 8 % at 20 kN over 1.5 m (nylon, from memory).
 */
final class Gear {
    static final double ROPE_METRES = 50;
    static final double RATED_PULL_NEWTONS = 40_000;
    /** Engine at the shaft: 29 kW at 540 rpm. Chosen. */
    static final double ENGINE_TORQUE = 520;

    static final double CHOKER_BREAKING = 60_000;
    static final double THIN_CHOKER_BREAKING = 33_600;
    static final double ROPE_BREAKING = 67_500;
    static final double STRAP_BREAKING = 100_000;
    /** 2 cos(60° / 2): the lines at the block stand at 60 degrees. */
    static final double BLOCK_MULTIPLE = 1.732_050_807_568_877_2;

    private static final double ROPE_EA = 5.6e6;
    private static final double CHOKER_EA = 5.47e6;
    private static final double THIN_CHOKER_EA = 4.18e6;
    private static final double CHOKER_METRES = 2.2;
    private static final double STRAP_STIFFNESS = 20_000 / (0.08 * 1.5);
    private static final double NEVER = Double.POSITIVE_INFINITY;

    private static final Drum.Size DRUM = new Drum.Size(0.180, 0.011, 14, 0.75, 1.6, 5, 18, ROPE_METRES);
    private static final double RATED_DRUM_TORQUE = RATED_PULL_NEWTONS * 0.0955;

    /** A little above the rated pull on the first layer. */
    static final double CLUTCH_TORQUE = 1.05 * RATED_DRUM_TORQUE;

    private Gear() {}

    static Engine engine() {
        return new Engine(9, ENGINE_TORQUE);
    }

    /** Its brake holds a quarter more than the rated pull. */
    static Drum drum() {
        return new Drum(DRUM, CLUTCH_TORQUE, 1.25 * RATED_DRUM_TORQUE);
    }

    static Rigging straight() {
        return new Rigging(
                "straight",
                1,
                List.of(Part.of("rope", 1, ROPE_BREAKING), Part.of("choker", 1, CHOKER_BREAKING)),
                ROPE_EA,
                CHOKER_METRES / CHOKER_EA,
                1,
                NEVER);
    }

    static Rigging roundTheCorner() {
        return new Rigging(
                "round-the-corner",
                2,
                List.of(
                        Part.of("rope", 1, ROPE_BREAKING),
                        Part.of("block-1", BLOCK_MULTIPLE, NEVER),
                        new Part("strap-1", BLOCK_MULTIPLE, STRAP_BREAKING, 3.5),
                        Part.of("choker", 1, CHOKER_BREAKING)),
                ROPE_EA,
                CHOKER_METRES / CHOKER_EA + BLOCK_MULTIPLE * BLOCK_MULTIPLE / STRAP_STIFFNESS,
                0.96,
                NEVER);
    }

    static Rigging thinChoker() {
        return new Rigging(
                "thin-choker",
                3,
                List.of(Part.of("rope", 1, ROPE_BREAKING), Part.of("thin-choker", 1, THIN_CHOKER_BREAKING)),
                ROPE_EA,
                CHOKER_METRES / THIN_CHOKER_EA,
                1,
                NEVER);
    }
}
