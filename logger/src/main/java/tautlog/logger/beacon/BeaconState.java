package tautlog.logger.beacon;

/** What the beacon can say; with its code on the wire. Source: {@code firmware-notes/wire.md}, BEACON. */
public enum BeaconState {
    CLEAR(0),
    /** At 0.8 of the limit or more, or the limit is only known as "at most". */
    CAUTION(1),
    /** Over the limit. */
    OVER(2),
    /** Sensor, line or recording. */
    FAULT(3);

    private final int code;

    BeaconState(int code) {
        this.code = code;
    }

    public int code() {
        return code;
    }
}
