package tautlog.rig;

import java.util.Locale;

/** What a piece of gear is; {@code OTHER} is whatever carries a marking. */
public enum GearKind {
    CHAIN,
    ROPE,
    WEB,
    BLOCK,
    HOOK,
    SHACKLE,
    OTHER;

    /** As in the rig: {@code chain}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether it can be laid round a log or a tree. */
    boolean isSling() {
        return this == CHAIN || this == ROPE || this == WEB || this == OTHER;
    }
}
