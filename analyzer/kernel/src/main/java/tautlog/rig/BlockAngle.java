package tautlog.rig;

import java.math.BigDecimal;
import tautlog.quantity.Angle;

/** Which angles between two lines are taken: up to 150 degrees. */
public final class BlockAngle {
    public static final String ALLOWED = "Allowed: 0 to " + BlockFactor.GREATEST_ANGLE
            + " degrees between the lines: beyond, a small error of the angle is a large one of the force.";
    private static final BigDecimal GREATEST = new BigDecimal(BlockFactor.GREATEST_ANGLE);

    private BlockAngle() {}

    public static boolean isTooWide(Angle betweenLines) {
        return betweenLines.degrees().compareTo(GREATEST) > 0;
    }

    /** What is wrong with an angle that is too wide, without a full stop. */
    public static String found(Angle betweenLines) {
        return betweenLines.degrees().toPlainString() + " degrees between the lines are too many";
    }
}
