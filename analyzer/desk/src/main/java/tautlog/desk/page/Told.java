package tautlog.desk.page;

import java.util.List;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Report;
import tautlog.detect.Finding.ShaftAfterDrop;

/**
 * Which findings a page tells in sentences, so that it is read in a minute; the rest is counted. What can have hurt somebody or
 * gear is always told, and so is what is not known well enough to leave it out.
 */
final class Told {
    /** Chosen: below it a jerk or a lost load is the everyday of skidding; above the limit it is an overload as well. */
    static final double FROM_SHARE = 0.9;

    private final boolean shaftIsWatched;
    private final List<Entry.Overload> overloads;

    Told(Report report) {
        overloads = report.overloads();
        shaftIsWatched = report.hours().shaftHours().isPresent();
    }

    /** The rule in words. */
    String rule() {
        return "Told here: every overload, shock and stall; every drop after which the shaft ran up or stopped"
                + (shaftIsWatched ? ", or may have" : " (no shaft reading: what the shaft did is not known)")
                + "; jolts that reached 90 % of the limit outside an overload and other drops that lost 90 % of it, and all of"
                + " them where the limit is only known as \"at most\" or a jolt's peak as \"at least\".";
    }

    boolean tells(Entry entry) {
        if (entry instanceof Entry.Jolt jolt) {
            boolean isBound = jolt.against().isAtMost() || jolt.atLeast();
            return !isInOverload(jolt) && (isBound || jolt.share() >= FROM_SHARE);
        }
        return !(entry instanceof Entry.Drop drop) || tellsDrop(drop);
    }

    /** Its peak is within an overload, which is told with a peak as great. */
    private boolean isInOverload(Entry.Jolt jolt) {
        return overloads.stream()
                .anyMatch(over ->
                        over.start().compareTo(jolt.at()) <= 0 && jolt.at().compareTo(over.end()) <= 0);
    }

    private boolean tellsDrop(Entry.Drop drop) {
        boolean shaftLetGo = drop.shaft() == ShaftAfterDrop.RAN_UP || drop.shaft() == ShaftAfterDrop.STOPPED;
        boolean shaftInDoubt = shaftIsWatched && drop.shaft() == ShaftAfterDrop.UNKNOWN;
        double lost =
                (drop.beforeNewtons() - drop.afterNewtons()) / drop.against().newtons();
        return shaftLetGo || shaftInDoubt || drop.against().isAtMost() || lost >= FROM_SHARE;
    }

    /** Overloads, shocks, jolts, drops and stalls, in the order of kinds. */
    static List<Entry> all(Report report) {
        return Stream.<List<? extends Entry>>of(
                        report.overloads(), report.shocks(), report.jolts(), report.drops(), report.stalls())
                .<Entry>flatMap(List::stream)
                .toList();
    }
}
