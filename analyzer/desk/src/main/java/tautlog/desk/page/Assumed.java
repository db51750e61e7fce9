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
 * @param mayBeLost somebody may have: damage took namings along
 */
record Assumed(String hookup, List<Entry.Pull> pulls, List<Entry.Pull> assumed, boolean mayBeLost) {
    static Assumed of(Report report, String hookup) {
        List<Entry.Pull> pulls = report.pulls().stream()
                .filter(pull -> pull.against().hookup().equals(hookup))
                .toList();
        return new Assumed(
                hookup,
                pulls,
                pulls.stream().filter(pull -> pull.against().assumed()).toList(),
                mayBeLost(report));
    }

    /** Where damage took namings along, somebody may have said so. */
    static String nobodySaid(Report report) {
        return mayBeLost(report) ? "nobody is known to have said" : "nobody said";
    }

    private static boolean mayBeLost(Report report) {
        return !report.hookupsNotKnown().isEmpty();
    }

    /** Somebody had said so for some of the pulls. */
    boolean isPartly() {
        return assumed.size() < pulls.size();
    }

    String inTable(Screen screen) {
        if (isPartly()) {
            return "said, but assumed " + extent(screen);
        }
        return mayBeLost ? "assumed, nobody is known to have said so" : "assumed, nobody said so";
    }

    String sentence(Screen screen) {
        String nobody = mayBeLost ? "nobody is known to have said" : "nobody had said";
        return nobody + " that hookup " + hookup + " was on " + extent(screen) + ".";
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
