package tautlog.desk.planning;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import tautlog.plan.Haul;
import tautlog.rig.FullPull;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;

/**
 * What one hookup meets: the expected pull, and beside it the winch's full pull.
 *
 * @param lowNewtons least tension in the line while the log moves; empty where the log may run by itself: then nothing can
 *     be said of it
 * @param highNewtons greatest tension while the log moves and nothing is in its way; empty where the log runs by itself
 */
public record PlannedPull(
        Hookup hookup, FullPull full, Optional<BigDecimal> lowNewtons, Optional<BigDecimal> highNewtons) {

    static PlannedPull of(Rig rig, Hookup hookup, Haul haul) {
        return new PlannedPull(
                hookup,
                FullPull.of(rig, hookup),
                haul.mayRun()
                        ? Optional.empty()
                        : Optional.of(tension(hookup, haul.pullNewtons().low())),
                haul.runs()
                        ? Optional.empty()
                        : Optional.of(tension(hookup, haul.pullNewtons().high())));
    }

    /** With a moving block the line carries about half of the pull. */
    private static BigDecimal tension(Hookup hookup, double pullNewtons) {
        return BigDecimal.valueOf(pullNewtons).divide(hookup.pullPerTension(), MathContext.DECIMAL64);
    }

    /** The same pull with the hookup's blocks at another angle. */
    PlannedPull with(Hookup turned) {
        return new PlannedPull(turned, new FullPull(full.tensionNewtons(), turned), lowNewtons, highNewtons);
    }

    Optional<BigDecimal> lowShare(LoadedItem item) {
        return lowNewtons.map(item::share);
    }

    Optional<BigDecimal> highShare(LoadedItem item) {
        return highNewtons.map(item::share);
    }

    BigDecimal fullShare(LoadedItem item) {
        return item.share(full.tensionNewtons());
    }

    /** Tension / the hookup's limit. */
    BigDecimal ofLimit(BigDecimal tensionNewtons) {
        return tensionNewtons.divide(hookup.limit().newtons(), MathContext.DECIMAL64);
    }

    /** The expected pull may be more than the winch can pull. */
    boolean mayStall() {
        return highNewtons
                .filter(high -> high.compareTo(full.tensionNewtons()) > 0)
                .isPresent();
    }
}
