package tautlog.rig;

import java.util.Locale;

/** What a piece of gear does in a hookup. */
enum Place {
    STRAIGHT,
    WINCH_LINE,
    CHOKER,
    BLOCK,
    BLOCK_STRAP,
    MOVING_BLOCK;

    /** As in the rig: {@code winch-line}. */
    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Where a piece of this kind is when the rig does not say; a rope, only where it can be no other than the winch's. */
    static Place ofKind(GearKind kind) {
        return kind == GearKind.ROPE ? WINCH_LINE : STRAIGHT;
    }

    boolean takes(GearKind kind) {
        return switch (this) {
            case STRAIGHT, BLOCK_STRAP -> kind != GearKind.BLOCK;
            case WINCH_LINE -> kind == GearKind.ROPE;
            case CHOKER -> kind.isSling();
            case BLOCK, MOVING_BLOCK -> kind == GearKind.BLOCK;
        };
    }
}
