package tautlog.logger.wire;

/** What the beacon shows; the constants stand in the order of their bytes on the wire. */
public enum BeaconState {
    /** Nothing known to be near the limit. No permission to approach. */
    CLEAR(0),
    /** 80 % of the limit or more, or the limit is only known as "at most". */
    CAUTION(1),
    /** Over the limit. */
    OVER(2),
    /** Sensor or recording are not to be trusted. */
    FAULT(3);

    private final int code;

    BeaconState(int code) {
        this.code = code;
    }

    /** The byte on the wire. */
    public int code() {
        return code;
    }
}
