package tautlog.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.rig.GearKind;

/** How tasks stand, worked out by hand. */
class JudgeTest {
    private static final Instant MONDAY = Instant.parse("2026-05-04T08:00:00Z");
    private static final Instant NOW = Instant.parse("2026-05-08T18:00:00Z");
    private static final Task GREASE = task("grease", "", Map.of(Meter.SHAFT_H, 8), "");

    private final List<Stint> stints = new ArrayList<>();
    private final List<Entry> entries = new ArrayList<>();
    private boolean incomplete;

    private static Task task(String id, String gear, Map<Meter, Integer> every, String after) {
        Map<Meter, BigDecimal> intervals = new java.util.EnumMap<>(Meter.class);
        every.forEach((meter, n) -> intervals.put(meter, BigDecimal.valueOf(n)));
        return new Task(
                id,
                id,
                Optional.of(gear).filter(g -> !g.isEmpty()),
                intervals,
                Optional.of(after).filter(a -> !a.isEmpty()),
                BigDecimal.TEN,
                BigDecimal.TEN,
                Optional.empty(),
                Optional.empty());
    }

    private JudgeTest outing(Instant start, double shaftHours, Happening... happenings) {
        return outing(start, Amount.known(shaftHours), happenings);
    }

    private JudgeTest outing(Instant start, Amount shaft, Happening... happenings) {
        stints.add(new Stint(
                Optional.of(start),
                Optional.of(start.plusSeconds(4 * 3600)),
                Map.of(Meter.SHAFT_H, shaft, Meter.PULLS, Amount.known(10), Meter.JOINT_H, Amount.between(0, 3)),
                Optional.of(Map.of("choker", Amount.known(6))),
                List.of(happenings)));
        return this;
    }

    private JudgeTest undated(double shaftHours, Happening... happenings) {
        stints.add(new Stint(
                Optional.empty(),
                Optional.empty(),
                Map.of(Meter.SHAFT_H, Amount.known(shaftHours)),
                Optional.empty(),
                List.of(happenings)));
        return this;
    }

    private JudgeTest entry(Instant at, Act act) {
        return entry(at, act, Optional.of("Wren"));
    }

    private JudgeTest entry(Instant at, Act act, Optional<String> by) {
        entries.add(
                new Entry("e" + entries.size(), at, at, by, Optional.empty(), Optional.empty(), Optional.empty(), act));
        return this;
    }

    private JudgeTest done(Instant at) {
        return entry(at, new Act.Done("grease"));
    }

    private Judge judge(ZoneId zone) {
        Map<String, Machine.Kept> gear = Map.of(
                "choker",
                new Machine.Kept(GearKind.CHAIN, 6, Optional.empty()),
                "rope",
                new Machine.Kept(GearKind.ROPE, 1, Optional.of(LocalDate.of(2026, 5, 4))));
        return new Judge(new Machine("upper-landing", gear, stints, incomplete), entries, NOW, zone);
    }

    private TaskState state(Task task) {
        return judge(ZoneOffset.UTC).state(task);
    }

    private static Instant day(int n) {
        return MONDAY.plusSeconds(n * 86_400L);
    }

    private static void is(Standing standing, TaskState state) {
        assertEquals(standing, state.standing(), () -> state.meters() + " " + state.doubts());
    }

    @Test
    void isLaterSoonDueAndOverdueExactlyAtTheBorders() {
        // 8 h, a tenth early, a tenth late: soon from 7.2, due from 8, overdue above 8.8
        Map<Double, Standing> borders = Map.of(
                7.1999, Standing.LATER,
                7.2, Standing.SOON,
                7.9999, Standing.SOON,
                8.0, Standing.DUE,
                8.8, Standing.DUE,
                8.8001, Standing.OVERDUE);
        borders.forEach((hours, standing) -> is(
                standing,
                new JudgeTest()
                        .outing(MONDAY, 1)
                        .done(day(1))
                        .outing(day(2), hours)
                        .state(GREASE)));
    }

    @Test
    void countsAnOutingThatWentOnWhileItWasDoneAsAfter() {
        outing(MONDAY, 8).done(MONDAY.plusSeconds(4 * 3600 - 1));
        is(Standing.DUE, state(GREASE));

        entries.clear();
        done(MONDAY.plusSeconds(4 * 3600));
        is(Standing.LATER, state(GREASE));
    }

    @Test
    void doesNotCallLaterWhatUnknownHoursMayMakeDue() {
        outing(MONDAY, 1).done(day(1)).outing(day(2), Amount.between(3, 9));

        TaskState state = state(GREASE);

        is(Standing.UNKNOWN, state);
        assertEquals(Standing.OVERDUE, state.mayBe());
        assertEquals(Amount.between(3, 9), state.meters().get(0).amount());
    }

    @Test
    void unknownHoursThatCannotReachTheIntervalChangeNothing() {
        is(
                Standing.LATER,
                outing(MONDAY, 1)
                        .done(day(1))
                        .outing(day(2), Amount.between(3, 7))
                        .state(GREASE));
    }

    @Test
    void soonMayBeOverdueByWhatIsNotKnown() {
        outing(MONDAY, 1).done(day(1)).outing(day(2), Amount.atLeast(7.5));

        is(Standing.SOON, state(GREASE));
        assertEquals(Standing.OVERDUE, state(GREASE).mayBe());
    }

    @Test
    void whatWasNeverEnteredIsNotKnownUntilTheRecordedHoursReachIt() {
        is(Standing.UNKNOWN, outing(MONDAY, 3).state(GREASE));
        assertEquals(Since.NEVER, state(GREASE).since());

        is(Standing.DUE, outing(day(1), 5).state(GREASE));
    }

    @Test
    void anOutingWithoutAClockIsNeitherBeforeNorAfter() {
        outing(MONDAY, 1).undated(20).done(day(1));

        is(Standing.UNKNOWN, state(GREASE));
        assertEquals(
                OptionalDouble.of(20), state(GREASE).meters().get(0).amount().greatest());
        assertEquals(0, state(GREASE).meters().get(0).amount().least());
    }

    @Test
    void timeBeforeTheFirstRecordingIsNotKnownUntilSomebodyEntersIt() {
        done(day(-3)).outing(MONDAY, 1);
        is(Standing.UNKNOWN, state(GREASE));

        entry(
                day(0),
                new Act.Worked(
                        day(-3).minusSeconds(3600),
                        day(0),
                        Optional.of(BigDecimal.ONE),
                        Optional.of(BigDecimal.ZERO),
                        Optional.of(BigDecimal.TEN)));
        is(Standing.LATER, state(GREASE));
        assertEquals(Amount.known(2), state(GREASE).meters().get(0).amount());
    }

    @Test
    void addsHoursEnteredByHandAndKnowsThatOthersWereNotEntered() {
        outing(MONDAY, 1).done(day(1)).outing(day(1).plusSeconds(3600), 1);
        entry(
                day(2),
                new Act.Worked(
                        day(2),
                        day(2).plusSeconds(7200),
                        Optional.of(new BigDecimal("1.5")),
                        Optional.empty(),
                        Optional.empty()));

        assertEquals(Amount.known(2.5), state(GREASE).meters().get(0).amount());
        Amount pulls = state(task("grease", "", Map.of(Meter.PULLS, 500), ""))
                .meters()
                .get(0)
                .amount();
        assertEquals(Amount.atLeast(10), pulls);
        Amount pullHours = state(task("grease", "", Map.of(Meter.PULL_H, 500), ""))
                .meters()
                .get(0)
                .amount();
        assertEquals(OptionalDouble.empty(), pullHours.greatest()); // that of the outing is not given
    }

    @Test
    void theWearOfTheJointDecidesByItsUpperBound() {
        outing(MONDAY, 1).done(day(1)).outing(day(2), 1);

        is(Standing.DUE, state(task("grease", "", Map.of(Meter.JOINT_H, 3), "")));
    }

    @Test
    void ofSeveralIntervalsTheFirstThatIsReachedCounts() {
        outing(MONDAY, 1).done(day(0).plusSeconds(5 * 3600)).outing(day(1), 1);

        // four days since
        is(Standing.DUE, state(task("grease", "", Map.of(Meter.SHAFT_H, 8, Meter.DAYS, 4), "")));
        is(Standing.OVERDUE, state(task("grease", "", Map.of(Meter.SHAFT_H, 8, Meter.DAYS, 3), "")));
        is(Standing.LATER, state(task("grease", "", Map.of(Meter.SHAFT_H, 8, Meter.DAYS, 10), "")));
    }

    @Test
    void countsDaysByTheLocalCalendar() {
        outing(MONDAY, 1).done(Instant.parse("2026-05-07T23:30:00Z"));
        Task daily = task("grease", "", Map.of(Meter.DAYS, 1), "");

        is(Standing.DUE, judge(ZoneOffset.UTC).state(daily));
        // there it was Friday already
        is(Standing.LATER, judge(ZoneId.of("Europe/Helsinki")).state(daily));
    }

    @Test
    void aCheckBeforeFirstUseIsDueAfterADayOfUseAndOverdueAfterTwo() {
        Task daily = task("grease", "", Map.of(Meter.USE_DAYS, 1), "");
        done(MONDAY.minusSeconds(1800));
        is(
                Standing.DUE,
                outing(MONDAY, 1).outing(MONDAY.plusSeconds(5 * 3600), 1).state(daily));

        is(Standing.OVERDUE, outing(day(1), 1).state(daily));
        is(Standing.LATER, done(day(1).plusSeconds(5 * 3600)).state(daily));
    }

    @Test
    void aHappeningCallsForItAndUsingOnMakesItOverdue() {
        Task inspect = task("grease", "choker", Map.of(), "overload");
        Happening overload =
                new Happening("overload", Optional.of(MONDAY.plusSeconds(3600)), List.of("choker", "rope"));
        is(Standing.DUE, outing(MONDAY, 1, overload).state(inspect));

        is(Standing.OVERDUE, outing(day(1), 1).state(inspect));
        is(Standing.LATER, done(MONDAY.plusSeconds(3601)).state(inspect));
        is(Standing.LATER, state(task("grease", "choker", Map.of(), "shock")));
    }

    @Test
    void gearThatWasNotUsedOnIsOnlyDue() {
        Task inspect = task("grease", "rope", Map.of(), "overload");
        Happening overload = new Happening("overload", Optional.of(MONDAY.plusSeconds(3600)), List.of("rope"));

        is(Standing.DUE, outing(MONDAY, 1, overload).outing(day(1), 1).state(inspect));
    }

    @Test
    void aHappeningWithoutATimeOrOfUnknownGearMayCallForIt() {
        Task inspect = task("grease", "rope", Map.of(), "overload");
        outing(MONDAY, 1).done(day(1)).undated(1, new Happening("overload", Optional.empty(), List.of("rope")));
        is(Standing.UNKNOWN, state(inspect));

        stints.clear();
        outing(day(2), 1, new Happening("overload", Optional.of(day(2)), List.of()));
        is(Standing.DUE, state(inspect));
    }

    @Test
    void aHappeningWithoutATimeCallsForWhatWasNeverDone() {
        undated(1, new Happening("overload", Optional.empty(), List.of("choker")));

        is(Standing.DUE, state(task("grease", "choker", Map.of(), "overload")));
    }

    @Test
    void anInspectionStandsForATaskAfterAHappeningOnlyWhenItIsOfAllPiecesAndReturnsThem() {
        Task inspect = task("grease", "choker", Map.of(), "overload");
        outing(MONDAY, 1, new Happening("overload", Optional.of(MONDAY), List.of("choker")));

        entry(day(1), inspected("choker", "red", Verdict.BACK_IN_SERVICE));
        is(Standing.DUE, state(inspect));
        entry(day(1), inspected("choker", "", Verdict.STAYS_OUT));
        is(Standing.DUE, state(inspect));
        entry(day(1), inspected("choker", "", Verdict.BACK_IN_SERVICE));
        is(Standing.LATER, state(inspect));
        assertEquals(Since.Kind.INSPECTED, state(inspect).since().kind());
    }

    private static Act inspected(String gear, String piece, Verdict verdict) {
        return new Act.Inspected(
                new GearPiece(gear, Optional.of(piece).filter(p -> !p.isEmpty())), verdict, Map.of(), List.of());
    }

    @Test
    void gearThatNobodySaysWhoFittedAnswersNoHappeningButBeginsItsIntervals() {
        Task inspect = task("grease", "choker", Map.of(), "overload");
        outing(MONDAY, 1, new Happening("overload", Optional.of(MONDAY), List.of("choker")));
        Act fitted = new Act.Fitted(new GearPiece("choker", Optional.empty()));

        entry(day(1), fitted, Optional.empty());
        is(Standing.DUE, state(inspect));
        assertEquals(
                Since.Kind.FITTED,
                state(task("grease", "choker", Map.of(Meter.PULLS, 9), ""))
                        .since()
                        .kind());
        entry(day(1), fitted);
        is(Standing.LATER, state(inspect));
    }

    @Test
    void gearCountsFromTheDayItWasFittedByTheRigOrTheLedger() {
        Task rope = task("other", "rope", Map.of(Meter.SHAFT_H, 8), "");
        outing(MONDAY, 5).outing(day(2), 4);
        is(Standing.OVERDUE, state(rope)); // fitted on Monday by the rig

        entry(day(1), new Act.Fitted(new GearPiece("rope", Optional.empty())));
        is(Standing.LATER, state(rope));
    }

    @Test
    void retiredGearHasNoTasksUntilOtherIsFitted() {
        outing(MONDAY, 1);
        Task rope = task("other", "rope", Map.of(Meter.SHAFT_H, 8), "");
        entry(day(1), new Act.Retired(new GearPiece("rope", Optional.empty())));
        assertTrue(judge(ZoneOffset.UTC).isRetired("rope"));
        assertEquals(List.of(), judge(ZoneOffset.UTC).states(List.of(rope)));

        entry(day(2), new Act.Fitted(new GearPiece("rope", Optional.empty())));
        assertFalse(judge(ZoneOffset.UTC).isRetired("rope"));
        assertEquals(1, judge(ZoneOffset.UTC).states(List.of(rope)).size());
    }

    @Test
    void gearThatTheRigSaysWasFittedAfterItWasRetiredHasItsTasksAgain() {
        outing(MONDAY, 1);
        Task rope = task("other", "rope", Map.of(Meter.SHAFT_H, 8), "");
        entry(MONDAY.minusSeconds(86_400), new Act.Retired(new GearPiece("rope", Optional.empty())));

        assertFalse(judge(ZoneOffset.UTC).isRetired("rope"));
        assertEquals(1, judge(ZoneOffset.UTC).states(List.of(rope)).size());
    }

    @Test
    void whatCouldNotBeReadMakesEverythingThatIsNotDueUnknown() {
        incomplete = true;
        is(Standing.UNKNOWN, outing(MONDAY, 1).done(day(1)).outing(day(2), 1).state(GREASE));
        is(Standing.UNKNOWN, state(task("grease", "", Map.of(), "overload")));
    }

    @Test
    void withoutAnyRecordingNothingIsKnown() {
        is(Standing.UNKNOWN, done(day(1)).state(GREASE));
        is(Standing.UNKNOWN, new JudgeTest().state(GREASE));
    }

    @Test
    void theMostUrgentComesFirst() {
        outing(MONDAY, 1).done(day(1)).outing(day(2), 8);
        List<Task> tasks = List.of(
                task("grease", "", Map.of(Meter.SHAFT_H, 100), ""),
                task("never", "", Map.of(Meter.SHAFT_H, 100), ""),
                task("grease", "", Map.of(Meter.SHAFT_H, 8), ""),
                task("grease", "", Map.of(Meter.SHAFT_H, 5), ""),
                task("grease", "gone", Map.of(Meter.SHAFT_H, 5), ""));

        assertEquals(
                List.of(Standing.OVERDUE, Standing.DUE, Standing.UNKNOWN, Standing.LATER),
                judge(ZoneOffset.UTC).states(tasks).stream()
                        .map(TaskState::standing)
                        .toList());
    }

    @Test
    void anEntryWithoutAWinchReassuresNobodyWhereThereAreSeveral() {
        done(day(1));
        entry(day(2), new Act.Worked(day(1), day(2), Optional.of(BigDecimal.ZERO), Optional.empty(), Optional.empty()));
        Ledger ledger = new Ledger(entries, java.util.Set.of(), Map.of(), List.of());

        LedgerView two = new LedgerView(ledger, java.util.Set.of("upper-landing", "hillside"));
        assertEquals(List.of("e1"), two.of("hillside").stream().map(Entry::id).toList());
        assertEquals(List.of("e0"), two.ownerless().stream().map(Entry::id).toList());
        LedgerView one = new LedgerView(ledger, java.util.Set.of("hillside"));
        assertEquals(2, one.of("hillside").size());
    }
}
