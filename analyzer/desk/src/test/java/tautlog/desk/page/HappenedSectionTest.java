package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.desk.report.Entry;
import tautlog.desk.report.LeftOut;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Interval;
import tautlog.detect.Finding.ShaftAfterDrop;
import tautlog.detect.Finding.StallEnd;
import tautlog.detect.Known;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Band;

/** Which findings are told in sentences, and how those of one pull are put together. Limit 10 kN. */
class HappenedSectionTest {
    private static final Screen SCREEN = new Screen(ForceUnit.KN, ZoneOffset.UTC, false, false);

    private final List<Entry.Pull> pulls = new ArrayList<>();
    private final List<Entry.Overload> overloads = new ArrayList<>();
    private final List<Entry.Shock> shocks = new ArrayList<>();
    private final List<Entry.Jolt> jolts = new ArrayList<>();
    private final List<Entry.Drop> drops = new ArrayList<>();
    private final List<Entry.Stall> stalls = new ArrayList<>();
    private boolean isAtMost;
    /** The readings that follow were at the converter's end stop. */
    private boolean isStopped;

    private OptionalDouble shaftHours = OptionalDouble.of(1);

    private static Moment at(double seconds) {
        return new Moment(Optional.empty(), 1, seconds);
    }

    private static final Interval UNKNOWN = Interval.unknown("of a test");

    private static final Bounds UNKNOWN_BOUNDS = Bounds.unknown("of a test");
    private boolean joltsAreResolved = true;

    private Entry.Against limit() {
        return new Entry.Against("straight", false, 10_000, isAtMost, "choker");
    }

    private void pull(double start, double end) {
        pulls.add(new Entry.Pull(
                at(start),
                at(end),
                end - start,
                9_000,
                5_000,
                1,
                limit(),
                0.9,
                0,
                0,
                Known.NO,
                isStopped,
                false,
                false,
                false,
                UNKNOWN,
                UNKNOWN,
                UNKNOWN_BOUNDS,
                UNKNOWN));
    }

    private void overload(double start, double peak, Band band) {
        overloads.add(new Entry.Overload(
                at(start),
                at(start + 1),
                1,
                peak,
                limit(),
                peak / 10_000,
                band,
                false,
                false,
                false,
                false,
                List.of(),
                UNKNOWN,
                Optional.empty()));
    }

    private void shock(double seconds, double peak, boolean resolved) {
        shocks.add(new Entry.Shock(
                at(seconds - 0.1),
                at(seconds),
                2,
                0.1,
                peak / 0.1,
                peak,
                resolved ? peak : 1.4 * peak,
                resolved,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                limit(),
                peak / 10_000,
                isStopped,
                false,
                UNKNOWN,
                UNKNOWN_BOUNDS,
                UNKNOWN,
                UNKNOWN_BOUNDS));
    }

    private void jolt(double seconds, double peak) {
        jolts.add(new Entry.Jolt(
                at(seconds - 0.1),
                at(seconds),
                peak,
                4_000,
                0.1,
                limit(),
                peak / 10_000,
                isStopped,
                UNKNOWN,
                joltsAreResolved,
                UNKNOWN));
    }

    private void drop(double seconds, double before, double after, Known slack, ShaftAfterDrop shaft) {
        drops.add(new Entry.Drop(
                at(seconds),
                before,
                after,
                0.05,
                slack,
                shaft,
                Known.YES,
                seconds < 15 ? Known.YES : Known.NO,
                limit(),
                UNKNOWN,
                UNKNOWN));
    }

    private Report report() {
        Report.Hours hours = new Report.Hours(
                shaftHours, 1, shaftHours, shaftHours, OptionalDouble.empty(), true, List.of(1.0, 0.0, 0.0, 0.0, 0.0));
        Report.Trust trust = new Report.Trust(
                0,
                0,
                0,
                Map.of(),
                0,
                0,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0,
                0,
                new Report.Zero(1, 0, 0, 0),
                List.of());
        return new Report(
                List.of(),
                List.of(),
                List.of(),
                pulls,
                overloads,
                shocks,
                jolts,
                drops,
                stalls,
                List.of(),
                List.of(),
                hours,
                trust,
                List.of(),
                List.of(),
                List.of(),
                new LeftOut(List.of(), List.of()));
    }

    private String digest() {
        return text(new HappenedSection(report(), SCREEN).section(ReportPage.Extent.DIGEST));
    }

    private static String text(Document.Section section) {
        return TextPage.render(new Document("", List.of(), "", List.of(section)), Ink.PLAIN)
                .replaceAll("\\s+", " ");
    }

    private static int count(String part, String text) {
        return text.split(java.util.regex.Pattern.quote(part), -1).length - 1;
    }

    @Test
    void putsLikeDropsOfOnePullIntoOneSentenceThatSaysOnlyWhatHoldsForAll() {
        pull(10, 20);
        drop(11, 9_800, 100, Known.NO, ShaftAfterDrop.KEPT_TURNING);
        drop(13, 9_900, 50, Known.NO, ShaftAfterDrop.KEPT_TURNING);
        drop(17, 9_500, 10, Known.NO, ShaftAfterDrop.KEPT_TURNING);

        assertTrue(
                digest().contains("Pull 10 s after start to 20 s after start, straight: up to 9.00 kN, 90 % of limit"
                        + " - 11.0 s after start to 17.0 s after start Drop 3 times, the greatest from 9.90 kN to"
                        + " 0.05 kN; each time the line took load again within 2 s. Each time the shaft kept turning,"
                        + " the clutch was engaged. A drop"),
                digest());
    }

    @Test
    void keepsFindingsOfTwoPullsApart() {
        pull(10, 20);
        pull(30, 40);
        jolt(11, 9_500);
        jolt(31, 9_600);

        assertEquals(2, count(" Jolt: ", digest()));
        assertTrue(digest().contains("Pull 30 s after start to 40 s after start"), digest());
    }

    @Test
    void tellsWhatHappenedBetweenPullsUnderAHeadingOfItsOwnInItsPlaceInTime() {
        pull(10, 20);
        pull(30, 40);
        jolt(11, 9_500);
        shock(25, 5_000, true);
        jolt(31, 9_600);

        String page = digest();

        assertTrue(page.indexOf("11.0 s after start Jolt") < page.indexOf("Outside a pull - 25.0 s after start Shock"));
        assertTrue(page.indexOf("25.0 s after start Shock") < page.indexOf("31.0 s after start Jolt"));
    }

    @Test
    void countsJoltsAndDropsBelowNineTenthsOfTheLimitAndSaysWhereTheyAre() {
        pull(10, 20);
        jolt(11, 8_999);
        jolt(12, 9_000);
        drop(13, 8_999, 0, Known.YES, ShaftAfterDrop.KEPT_TURNING);
        drop(14, 9_000, 1, Known.YES, ShaftAfterDrop.STILL);
        drop(15, 9_001, 1, Known.YES, ShaftAfterDrop.KEPT_TURNING);

        assertTrue(digest().contains("Left out: 1 jolt and 2 drops; --json, --csv and --html have them."), digest());
        assertEquals(1, count(" Jolt: ", digest()));
        assertEquals(1, count(" Drop: ", digest()));
    }

    @Test
    void leavesNoDropOutAfterWhichTheShaftRanUpOrStoppedOrMayHave() {
        drop(11, 5_000, 0, Known.YES, ShaftAfterDrop.RAN_UP);
        drop(12, 5_000, 0, Known.YES, ShaftAfterDrop.STOPPED);
        drop(13, 5_000, 0, Known.YES, ShaftAfterDrop.UNKNOWN);

        assertTrue(digest().contains("The shaft ran up"), digest());
        assertTrue(digest().contains("The shaft stopped within a second"), digest());
        assertTrue(digest().contains("What the shaft did is not known"), digest());
        assertTrue(digest().contains("Nothing was left out."), digest());
    }

    @Test
    void saysThatNoShaftIsWatchedInsteadOfTellingEveryDropOfAWinchWithoutItsSensor() {
        shaftHours = OptionalDouble.empty();
        drop(13, 5_000, 0, Known.YES, ShaftAfterDrop.UNKNOWN);

        assertTrue(digest().contains("(no shaft reading: what the shaft did is not known)"), digest());
        assertTrue(digest().contains("Left out: 1 drop;"), digest());
    }

    @Test
    void leavesNothingOutWhereTheLimitIsOnlyKnownAsAtMost() {
        isAtMost = true;
        jolt(11, 3_000);
        drop(12, 3_000, 0, Known.NO, ShaftAfterDrop.KEPT_TURNING);

        assertTrue(digest().contains("Nothing was left out."), digest());
        assertTrue(digest().contains("at least 30 % of limit"), digest());
    }

    @Test
    void saysAtLeastOfAPullShockAndJoltAtTheEndStopAndLeavesNoSuchJoltOut() {
        pull(10, 20);
        jolt(12, 3_000);
        isStopped = true;
        pull(30, 40);
        shock(31, 5_000, true);
        jolt(33, 3_000);

        assertTrue(digest().contains("straight: up to at least 9.00 kN, at least 90 % of limit"), digest());
        assertTrue(
                digest().contains("snapped tight to at least 5.00 kN within 0.1 s, at least 50 % of limit"), digest());
        assertTrue(
                digest().contains("33.0 s after start Jolt: the loaded line was jerked by at least 4.00 kN to at least"
                        + " 3.00 kN within 0.1 s, at least 30 % of limit. More is possible"),
                digest());
        assertTrue(digest().contains("Left out: 1 jolt;"), digest());
    }

    @Test
    void tellsAJoltWithinAnOverloadByTheOverload() {
        pull(10, 20);
        overload(11, 12_000, Band.PAST_WLL);
        jolt(11.5, 12_000);
        jolt(13, 9_500);

        assertEquals(1, count(" Jolt: ", digest()));
        assertTrue(digest().contains("13.0 s after start Jolt"), digest());
        assertTrue(digest().contains("Left out: 1 jolt;"), digest());
    }

    @Test
    void tellsOverloadsPastTheProofLoadApartFromLesserOnesOfThePull() {
        pull(10, 40);
        overload(11, 12_000, Band.PAST_WLL);
        overload(21, 25_000, Band.PAST_PROOF);
        overload(31, 13_000, Band.PAST_WLL);

        assertTrue(
                digest().contains("11.0 s after start to 32.0 s after start Overload twice, above the limit for"
                        + " 2.0 s in all. The greatest: 31.0 s after start Overload: 13.0 kN"),
                digest());
        assertTrue(digest().contains("21.0 s after start Overload (past-proof): 25.0 kN"), digest());
    }

    @Test
    void tellsAShockThatTheInstrumentDoesNotResolveApartFromGreaterOnes() {
        pull(10, 20);
        shock(11, 9_000, true);
        shock(13, 8_000, true);
        shock(15, 4_000, false);

        assertTrue(digest().contains("Shock twice. The greatest: 11.0 s after start Shock"), digest());
        assertTrue(digest().contains("15.0 s after start Shock"), digest());
        assertTrue(digest().contains("The instrument is too slow for this shock"), digest());
    }

    @Test
    void countsJoltsAsWellAsShocksThatTheInstrumentIsTooSlowFor() {
        pull(10, 20);
        shock(11, 9_000, true);
        jolt(12, 9_500);
        assertFalse(digest().contains("Too slow for shocks"), digest());
        joltsAreResolved = false;
        jolt(13, 9_500);
        jolt(14, 9_500);
        assertTrue(digest().contains("2 jolts rose in too few readings"), digest());
        shock(15, 9_000, false);
        assertTrue(digest().contains("1 shock and 2 jolts rose in too few readings"), digest());
    }

    @Test
    void tellsTheDeepestOfSeveralStalls() {
        pull(10, 20);
        stalls.add(new Entry.Stall(at(11), at(12), StallEnd.RECOVERED, 300, 540, 8_000, UNKNOWN));
        stalls.add(new Entry.Stall(at(13), at(14), StallEnd.RECOVERED, 200, 540, 8_000, UNKNOWN));
        stalls.add(new Entry.Stall(at(15), at(16), StallEnd.STOPPED, 0, 540, 8_000, UNKNOWN));

        assertTrue(digest().contains("Stall twice. The deepest: 13.0 s after start Stall"), digest());
        assertTrue(digest().contains("15.0 s after start Stall"), digest());
    }

    @Test
    void listsEveryFindingInASentenceOfItsOwnForTheLongPage() {
        pull(10, 20);
        jolt(11, 2_000);
        jolt(12, 9_500);
        jolt(13, 9_500);
        drop(14, 2_000, 0, Known.NO, ShaftAfterDrop.KEPT_TURNING);

        HappenedSection happened = new HappenedSection(report(), SCREEN);
        String everything = text(happened.everything());

        assertEquals(3, count(" Jolt: ", everything));
        assertEquals(1, count(" Drop: ", everything));
        assertTrue(text(happened.section(ReportPage.Extent.EVERYTHING)).contains("see \"Everything"));
        assertFalse(digest().contains("see \"Everything"), digest());
    }
}
