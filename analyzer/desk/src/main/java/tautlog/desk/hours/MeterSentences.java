package tautlog.desk.hours;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tautlog.desk.page.HoursSection;
import tautlog.desk.page.Screen;
import tautlog.rig.Opening;

/** What the meters show with all that is known: opening readings, recorded, and told by a ledger. */
final class MeterSentences {
    private static final String BEFORE_IS_UNKNOWN =
            " in these recordings; what was before them is not known here: each winch has its own opening reading.";

    private final HoursTable table;

    private MeterSentences(HoursTable table) {
        this.table = table;
    }

    static List<String> of(HoursTable table) {
        return new MeterSentences(table).all();
    }

    private List<String> all() {
        List<String> meters = new ArrayList<>();
        Opening opening = table.opening().orElse(Opening.NONE);
        meters.add("Shaft: " + shaft(opening));
        if (table.unlogged().entries() > 0) {
            meters.add(unlogged(table.unlogged()));
        }
        meters.add("Pulls: "
                + (table.unlogged().pullHours().isAtLeast() ? "at least " : "")
                + sum(
                        opening.pullHours().add(table.unlogged().pullHours().known()),
                        table.total().hours().pullHours())
                + " in "
                + (table.unlogged().pulls().isAtLeast() ? "at least " : "")
                + Screen.counted(
                        opening.pulls()
                                + table.unlogged().pulls().known().longValue()
                                + table.total().count("pull"),
                        "pull")
                + (table.opening().isEmpty()
                        ? BEFORE_IS_UNKNOWN
                        : ", of which " + opening.pullHours().toPlainString() + " h in "
                                + Screen.counted(opening.pulls(), "pull") + " before the first recording."));
        meters.add(
                table.total().hours().jointHours().isEmpty()
                        ? "Joint, relative wear: not known; the rig does not describe drum, joint and shaft, or there is no"
                                + " shaft reading."
                        : "Joint, relative wear: "
                                + HoursSection.joint(table.total().hours())
                                + " at its rating; no life in hours follows from it.");
        return meters;
    }

    private String shaft(Opening opening) {
        OptionalDouble worked = table.total().hours().shaftHours();
        String before = opening.shaftHours().toPlainString() + " h before the first recording";
        if (worked.isEmpty()) {
            return table.opening().isEmpty() ? "not known" + BEFORE_IS_UNKNOWN : before + "; since then not known.";
        }
        boolean atLeast = table.total().hours().shaftIsAtLeast()
                || table.unlogged().shaftHours().isAtLeast();
        return (atLeast ? "at least " : "")
                + sum(opening.shaftHours().add(table.unlogged().shaftHours().known()), worked.getAsDouble())
                + (table.opening().isEmpty() ? BEFORE_IS_UNKNOWN : ", of which " + before + ".");
    }

    private static String unlogged(Unlogged unlogged) {
        return "In the ledger, worked while nothing was recorded: shaft " + figure(unlogged.shaftHours(), " h")
                + ", pulls " + figure(unlogged.pullHours(), " h") + " in " + figure(unlogged.pulls(), "")
                + "; these are in the two meters here.";
    }

    private static String figure(Unlogged.Figure figure, String unit) {
        String known = (figure.isAtLeast() ? "at least " : "") + figure.known().toPlainString() + unit;
        return figure.silent() == 0
                ? known
                : known + " (" + figure.silent() + (figure.silent() == 1 ? " entry" : " entries") + " without it)";
    }

    private static String sum(BigDecimal opening, double worked) {
        return String.format(Locale.ROOT, "%.2f h", opening.doubleValue() + worked);
    }
}
