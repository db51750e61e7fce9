package tautlog.desk.planning;

import java.util.List;
import tautlog.plan.Friction;
import tautlog.plan.GroundClass;
import tautlog.plan.Haul;

/** What a plan says whatever the figures are. */
final class PlanWords {
    private PlanWords() {}

    /** What no figure of a plan holds, a sentence or two each. */
    static List<String> unknown() {
        return List.of(
                "Roots, stumps, stones, frozen ground, a butt that digs in, a tree that stands in the way: the log hangs up, and"
                        + " the line carries the winch's full pull.",
                "The start: breaking a log loose from where it lies takes more than keeping it moving.",
                "A shock: a slack line that snaps tight, or a log that comes free with a jerk, can carry more than the expected"
                        + " pull, and more than a steady full pull.",
                "A second log on the line, earth and snow that come along, branches that were not counted, a stem still held by"
                        + " its hinge or its neighbours.",
                "A line that does not run along the slope, lifts the log or presses it down.",
                "Friction of the sheaves: each block asks a few percent more of the winch than is shown here.",
                "Wear and damage of the gear.");
    }

    static String mayRun(Haul haul) {
        return (haul.runs()
                        ? "On this slope the log runs by itself, whatever friction of the band it meets. "
                        : "On this slope the log may run by itself: where its friction is at the low end, the slope pulls more"
                                + " than the ground holds. ")
                + "It can overrun the line, and the line can snap tight after it; no figure of this page holds for that.";
    }

    static String ground(Friction friction) {
        return friction.ground()
                .map(GroundClass::words)
                .orElse(friction.isAssumed() ? "not said" : "friction as written");
    }
}
