package tautlog.rig;

import java.math.BigDecimal;

/**
 * The greatest tension at which no item of a hookup exceeds its working load limit.
 *
 * @param newtons above 0
 * @param isAtMost true when it is only an upper bound (an unrated choke angle): the true limit is lower
 * @param governing id of the gear that sets it; of equals the first listed
 */
public record Limit(BigDecimal newtons, boolean isAtMost, String governing) {}
