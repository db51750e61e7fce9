package tautlog.rig;

import java.math.BigDecimal;

/** What the winch had done before the first recording: the meters' opening readings, each 0 or more. */
public record Opening(BigDecimal shaftHours, BigDecimal pullHours, int pulls) {
    public static final Opening NONE = new Opening(BigDecimal.ZERO, BigDecimal.ZERO, 0);
}
