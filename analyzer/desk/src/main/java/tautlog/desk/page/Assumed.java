package tautlog.desk.page;

import java.util.List;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Report;

/**
 * Which pulls rest on the assumption that a hookup was on.
 *
 * @param hookup its id
 * @param pulls those with the limit of that hookup, in the order of time
 * @param assumed those of them for which nobody had said that it was on
 */
record Assumed(String hookup, List<Entry.Pull> pulls, List<Entry.Pull> assumed) {
    static Assumed of(Report report, String hookup) {
        List<Entry.Pull> pulls = report.pulls().stream()
                .filter(pull -> pull.against().hookup().equals(hookup))
                .toList();
        return new Assumed(
                hookup,
                pulls,
                pulls.stream().filter(pull -> pull.against().assumed()).toList());
    }

    /** Somebody had said so for some of the pulls. */
    boolean isPartly() {
        return assumed.size() < pulls.size();
    }

    String inTable(Screen screen) {
        return isPartly() ? "said, but assumed " + extent(screen) : "assumed, nobody said so";
    }

    String sentence(Screen screen) {
        return "nobody had said that hookup " + hookup + " was on " + extent(screen) + ".";
    }

    private String extent(Screen screen) {
        if (assumed.isEmpty()) {
            return "for a finding outside the pulls";
        }
        return "for " + assumed.size() + " of " + Screen.counted(pulls.size(), "pull") + ", from "
                + screen.time(assumed.get(0).start()) + " to "
                + screen.time(assumed.get(assumed.size() - 1).end());
    }
}
