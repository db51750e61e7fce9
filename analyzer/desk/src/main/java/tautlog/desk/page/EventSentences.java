package tautlog.desk.page;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.detect.Finding.ShaftAfterDrop;
import tautlog.detect.Known;
import tautlog.rig.Band;

/** Shocks, jolts, drops, stalls and overloads in plain sentences; facts, no causes. */
public final class EventSentences {
    private static final String TOO_SLOW_FOR_JOLT =
            " The instrument is too slow for this jolt: the true peak may have been much higher.";

    private final Screen screen;

    public EventSentences(Screen screen) {
        this.screen = screen;
    }

    public String shock(Entry.Shock shock) {
        String sentence = screen.preciseTime(shock.at()) + " Shock: a line that had been slack for "
                + Screen.length(shock.slackSeconds()) + " snapped tight to "
                + screen.force(shock.peakNewtons(), shock.atLeast()) + screen.interval(shock.peakInterval())
                + " within "
                + Screen.length(shock.riseSeconds()) + ", "
                + Screen.share(shock.share(), shock.shareBounds(), shock.against(), shock.atLeast())
                + settled(shock)
                + ".";
        String gap = shock.hasGap() ? " Readings are missing in it." : "";
        return sentence + gap + more(shock.atLeast()) + (shock.resolved() ? halfSine(shock) : tooSlow(shock));
    }

    /** Said of a peak that is a lower bound. */
    static String more(boolean atLeast) {
        return atLeast ? " More is possible: the reading was at its own end or past the cell's capacity." : "";
    }

    private String settled(Entry.Shock shock) {
        if (shock.settledNewtons().isEmpty()) {
            return "; what it settled at is not known";
        }
        String level = screen.force(shock.settledNewtons().getAsDouble()) + screen.interval(shock.settledInterval());
        return shock.factor().isPresent()
                ? String.format(
                        Locale.ROOT,
                        ", %s%.1f%s times the %s it settled at",
                        Screen.atLeast(shock.atLeast()),
                        shock.factor().getAsDouble(),
                        Screen.factor(shock.factorBounds()),
                        level)
                : "; it settled at " + level;
    }

    /** Said when it is more than a hundredth above the peak. */
    private String halfSine(Entry.Shock shock) {
        return isLittleAbove(shock)
                ? ""
                : " Between two readings it may have reached "
                        + screen.force(shock.peakIfHalfSineNewtons(), shock.atLeast())
                        + " (an estimate, no bound).";
    }

    private static boolean isLittleAbove(Entry.Shock shock) {
        return shock.peakIfHalfSineNewtons() <= 1.01 * shock.peakNewtons();
    }

    private String tooSlow(Entry.Shock shock) {
        String known = " The instrument is too slow for this shock: the true peak may have been much higher";
        return isLittleAbove(shock)
                ? known + "."
                : known + "; " + screen.force(shock.peakIfHalfSineNewtons(), shock.atLeast())
                        + " if the rise was a quarter of a sine (an estimate, no"
                        + " bound).";
    }

    public String jolt(Entry.Jolt jolt) {
        return screen.preciseTime(jolt.at()) + " Jolt: the loaded line was jerked by "
                + screen.force(jolt.riseNewtons(), jolt.atLeast()) + screen.interval(jolt.riseInterval())
                + " to " + screen.force(jolt.peakNewtons(), jolt.atLeast()) + screen.interval(jolt.peakInterval())
                + " within "
                + Screen.length(jolt.riseSeconds()) + ", "
                + Screen.share(jolt.share(), jolt.shareBounds(), jolt.against(), jolt.atLeast()) + "."
                + more(jolt.atLeast()) + (jolt.resolved() ? "" : TOO_SLOW_FOR_JOLT);
    }

    public String drop(Entry.Drop drop) {
        return screen.preciseTime(drop.start()) + " Drop: tension fell from " + screen.force(drop.beforeNewtons())
                + screen.interval(drop.beforeInterval()) + " to "
                + screen.force(drop.afterNewtons()) + screen.interval(drop.afterInterval()) + " within "
                + Screen.length(drop.fallSeconds()) + "; "
                + slack(drop.staysSlack()) + ". "
                + capital(driveline(drop.shaft(), drop.clutch(), drop.brake()));
    }

    private static String capital(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    static String slack(Known staysSlack) {
        return switch (staysSlack) {
            case YES -> "the line stayed slack";
            case NO -> "the line took load again within 2 s";
            case UNKNOWN -> "whether the line stayed slack is not known";
        };
    }

    /** What shaft, clutch and brake did; a switch that is not known is left out. */
    static String driveline(ShaftAfterDrop shaft, Known clutch, Known brake) {
        return shaft(shaft)
                + said(clutch, ", the clutch was engaged", ", the clutch was not engaged")
                + said(brake, ", the brake was on", ", the brake was not on") + ".";
    }

    private static String shaft(ShaftAfterDrop shaft) {
        return switch (shaft) {
            case UNKNOWN -> "what the shaft did is not known";
            case STILL -> "the shaft stood still";
            case STOPPED -> "the shaft stopped within a second";
            case RAN_UP -> "the shaft ran up";
            case KEPT_TURNING -> "the shaft kept turning";
        };
    }

    private static String said(Known known, String yes, String no) {
        return switch (known) {
            case YES -> yes;
            case NO -> no;
            case UNKNOWN -> "";
        };
    }

    /** {@code twice}, {@code 3 times}. */
    public static String times(int n) {
        return n == 1 ? "once" : n == 2 ? "twice" : n + " times";
    }

    public String stall(Entry.Stall stall) {
        double seconds = stall.end().seconds() - stall.start().seconds();
        return screen.preciseTime(stall.start()) + " Stall: the loaded shaft was pulled down from "
                + rpm(stall.beforeRpm()) + " to " + rpm(stall.leastRpm()) + " at "
                + screen.force(stall.tensionNewtons()) + screen.interval(stall.tensionInterval())
                + "; " + ended(stall) + " after " + Screen.length(seconds) + ".";
    }

    private static String ended(Entry.Stall stall) {
        return switch (stall.ended()) {
            case RECOVERED -> "it recovered";
            case STOPPED -> "it stopped";
            case PULL_ENDED -> "the pull ended";
        };
    }

    private static String rpm(double rpm) {
        return String.format(Locale.ROOT, "%.0f rpm", rpm);
    }

    public String overload(Entry.Overload overload) {
        return screen.preciseTime(overload.start()) + " Overload" + band(overload) + ": "
                + screen.force(overload.peakNewtons(), overload.atLeast()) + screen.interval(overload.peakInterval())
                + ", "
                + Screen.share(overload.share(), overload.shareBounds(), overload.against(), overload.atLeast()) + " "
                + screen.force(overload.against().newtons())
                + (overload.against().isAtMost() ? " at most" : "") + " (hookup "
                + overload.against().hookup() + (overload.against().assumed() ? ", assumed" : "") + ", set by "
                + overload.against().governing() + "), above it for " + Screen.length(overload.aboveSeconds())
                + cuts(overload) + ".";
    }

    private static String band(Entry.Overload overload) {
        List<String> words = Stream.of(
                        overload.band() == Band.PAST_WLL ? "" : overload.band().word(),
                        overload.worseMayBe().map(EventSentences::mayBe).orElse(""))
                .filter(word -> !word.isEmpty())
                .toList();
        return words.isEmpty() ? "" : " (" + String.join(", ", words) + ")";
    }

    /** {@code may be past-proof}. */
    static String mayBe(Band band) {
        return "may be " + band.word();
    }

    private static String cuts(Entry.Overload overload) {
        return (overload.hasGap() ? ", readings missing in it" : "")
                + (overload.cutByGap() ? ", cut off by a gap" : "")
                + (overload.cutByEnd() ? ", cut off by the outing's end" : "");
    }
}
