package tautlog.desk.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;
import tautlog.desk.report.LeftOut;
import tautlog.service.Act;
import tautlog.service.Amount;
import tautlog.service.Entry;
import tautlog.service.Ledger;
import tautlog.service.Machine;
import tautlog.service.Meter;
import tautlog.service.ServicePlan;
import tautlog.service.Stint;

/** When tasks will be due. */
class ForecastTest {
    /** A Monday. */
    private static final LocalDate START = LocalDate.of(2026, 3, 2);

    private static final ZoneId ZONE = ZoneOffset.UTC;

    private final List<Stint> stints = new ArrayList<>();

    private static ServicePlan plan(String tasks) throws ConfigException {
        return ServicePlan.parse("service.toml", "schema = 1\n" + tasks);
    }

    private static String task(String id, String every) {
        return "[[task]]\nid = \"" + id
                + "\"\ntitle = \"Grease, \\\"well\\\"; then\\\\wipe\"\non = \"winch\"\nevery = { " + every + " }\n";
    }

    private void outing(LocalDate day, double shaftHours) {
        Instant start = day.atTime(9, 0).toInstant(ZoneOffset.UTC);
        stints.add(new Stint(
                Optional.of(start),
                Optional.of(start.plusSeconds(3600)),
                Map.of(Meter.SHAFT_H, Amount.known(shaftHours)),
                Optional.empty(),
                List.of()));
    }

    private ServiceState state(ServicePlan plan, LocalDate today, LocalDate done) {
        Instant at = done.atTime(18, 0).toInstant(ZoneOffset.UTC);
        List<Entry> entries = plan.tasks().stream()
                .map(task -> new Entry(
                        "e-" + task.id(),
                        at,
                        at,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        new Act.Done(task.id())))
                .toList();
        return ServiceState.of(
                new ServiceState.Known(
                        List.of(new Machine("upper-landing", Map.of(), stints, false)),
                        List.of(),
                        new LeftOut(List.of(), List.of())),
                plan,
                new Ledger(entries, Set.of(), Map.of(), List.of()),
                Optional.empty(),
                today.atTime(20, 0).toInstant(ZoneOffset.UTC),
                ZONE);
    }

    @Test
    void anEvenPaceGivesADayOfTheWeekOnWhichThereIsUse() throws ConfigException {
        // four hours every Tuesday and Friday of six weeks, so 8 h a week
        for (int week = 0; week < 6; week++) {
            outing(START.plusWeeks(week).plusDays(1), 4);
            outing(START.plusWeeks(week).plusDays(4), 4);
        }
        LocalDate sunday = START.plusWeeks(6).minusDays(1);

        TaskForecast forecast = Forecaster.of(state(plan(task("grease", "shaft_h = 18")), sunday.plusDays(1), sunday))
                .get(0);

        assertFalse(WeeklyUse.of(stints, Meter.SHAFT_H, Optional.empty(), sunday.plusDays(1), ZONE)
                .orElseThrow()
                .isPartial());
        // 4 h on Tuesday, Friday, Tuesday, Friday make 16; the next Tuesday passes 18
        assertEquals(Outlook.on(sunday.plusDays(16)), forecast.outlook().orElseThrow());
        assertEquals(
                List.of("8.0 h of the shaft a week, by the last 5 whole weeks; with 95 % if the next are like them."),
                forecast.basis());
    }

    @Test
    void anUnevenPaceGivesAnIntervalThatHoldsTheMean() throws ConfigException {
        double[] hours = {8, 2, 14, 5, 11, 8, 3};
        for (int week = 0; week < hours.length; week++) {
            outing(START.plusWeeks(week).plusDays(2), hours[week]);
        }
        LocalDate sunday = START.plusWeeks(7).minusDays(1);

        Outlook outlook = Forecaster.of(state(plan(task("grease", "shaft_h = 40")), sunday.plusDays(1), sunday))
                .get(0)
                .outlook()
                .orElseThrow();

        // weeks 2 to 7: mean 43/6 h, s 4.7081 h, t(5) 2.5706 (Student's table); K weeks: 7.1667 K ± 12.103 √(K + K²/6)
        // K 3: 21.5 + 25.7 ≥ 40, K 2: 14.3 + 19.8 < 40; K 6: 43 ≥ 40
        assertEquals(sunday.plusDays(3 + 14), outlook.earliest().orElseThrow());
        assertEquals(sunday.plusDays(3 + 35), outlook.expected().orElseThrow());
        double latestWeeks = firstWeekOf(40, 43 / 6.0, 12.1026, 6);
        assertEquals(
                sunday.plusDays(3 + 7 * ((long) latestWeeks - 1)),
                outlook.latest().orElseThrow());
    }

    private static double firstWeekOf(double hours, double mean, double ts, int n) {
        double weeks = 1;
        while (weeks * mean - ts * Math.sqrt(weeks + weeks * weeks / n) < hours) {
            weeks++;
        }
        return weeks;
    }

    @Test
    void twoWeeksOfUseAreNotEnoughAndThatIsSaid() throws ConfigException {
        outing(START, 4);
        outing(START.plusWeeks(1), 4);
        outing(START.plusWeeks(2), 4);
        LocalDate today = START.plusWeeks(3);

        TaskForecast forecast = Forecaster.of(state(plan(task("grease", "shaft_h = 18")), today, today.minusDays(1)))
                .get(0);

        // the first week may have begun before the recordings: two are left
        assertTrue(forecast.outlook().isEmpty());
        assertTrue(forecast.basis().get(0).startsWith("Not enough use to say when"));
    }

    @Test
    void weeksWithoutUseCountAsSuch() throws ConfigException {
        for (int week = 0; week < 9; week += 2) {
            outing(START.plusWeeks(week), 8);
        }
        WeeklyUse use = WeeklyUse.of(stints, Meter.SHAFT_H, Optional.empty(), START.plusWeeks(9), ZONE)
                .orElseThrow();

        assertEquals(List.of(0.0, 8.0, 0.0, 8.0, 0.0, 8.0, 0.0, 8.0), use.weeks());
        assertEquals(4, use.mean());
    }

    @Test
    void daysAreCountedByTheCalendarAndTheFirstOfSeveralCounts() throws ConfigException {
        outing(START, 4);
        LocalDate today = START.plusDays(10);

        TaskForecast forecast = Forecaster.of(state(plan(task("grease", "shaft_h = 18, days = 30")), today, START))
                .get(0);

        assertEquals(Outlook.on(START.plusDays(30)), forecast.outlook().orElseThrow());
    }

    @Test
    void whatIsDueIsDueToday() throws ConfigException {
        outing(START.plusDays(1), 9);

        TaskForecast forecast = Forecaster.of(state(plan(task("grease", "shaft_h = 8")), START.plusDays(2), START))
                .get(0);

        assertEquals(Outlook.on(START.plusDays(2)), forecast.outlook().orElseThrow());
    }

    /** 400 simulated seasons: the true day lies within the interval about as often as it says. */
    @Test
    void theIntervalHoldsTheDayAboutAsOftenAsItSays() throws ConfigException {
        Random random = new Random(17);
        int held = 0;
        int runs = 400;
        for (int run = 0; run < runs; run++) {
            stints.clear();
            LocalDate today = START.plusWeeks(9).minusDays(1);
            double sum = 0;
            LocalDate reached = today.plusYears(3);
            for (int week = 0; week < 120; week++) {
                for (int day = 0; day < 5; day++) {
                    LocalDate date = START.plusWeeks(week).plusDays(day);
                    double hours = Math.max(0, 2 + random.nextGaussian());
                    if (!date.isAfter(today)) {
                        outing(date, hours);
                    } else {
                        sum += hours;
                        reached = sum >= 40 && date.isBefore(reached) ? date : reached;
                    }
                }
            }
            Outlook outlook = Forecaster.of(state(plan(task("grease", "shaft_h = 40")), today, today.minusDays(1)))
                    .get(0)
                    .outlook()
                    .orElseThrow();
            boolean isHeld = !reached.isBefore(outlook.earliest().orElseThrow())
                    && !reached.isAfter(outlook.latest().orElse(LocalDate.MAX));
            held += isHeld ? 1 : 0;
        }
        // 95 % of 400 is 380; three standard deviations of a count are 13, and days are whole
        assertTrue(held >= 367, held + " of " + runs);
    }

    @Test
    void aCalendarParserReadsTheEvents() throws ConfigException {
        for (int week = 0; week < 6; week++) {
            outing(START.plusWeeks(week).plusDays(1), 8);
        }
        LocalDate sunday = START.plusWeeks(6).minusDays(1);
        ServiceState state =
                state(plan(task("grease", "shaft_h = 18") + task("oil", "pulls = 5")), sunday, sunday.minusDays(1));

        String text = Calendar.render(state).orElseThrow();

        ICalendar calendar = Biweekly.parse(text).first();
        assertEquals(
                List.of(),
                calendar.validate(biweekly.ICalVersion.V2_0).getWarnings().stream()
                        .toList());
        // nothing is known of pulls, and none were since: no day can be said
        assertEquals(1, calendar.getEvents().size());
        VEvent event = calendar.getEvents().stream()
                .filter(one -> one.getUid().getValue().startsWith("grease."))
                .findFirst()
                .orElseThrow();
        assertEquals("grease.upper-landing@tautlog", event.getUid().getValue());
        assertEquals(
                "Grease, \"well\"; then\\wipe (upper-landing)",
                event.getSummary().getValue());
        assertFalse(event.getDateStart().getValue().hasTime());
        assertEquals(sunday.plusDays(16), localDate(event));
        assertTrue(text.endsWith("END:VCALENDAR\r\n"));
        assertEquals(Optional.of(text), Calendar.render(state));
    }

    /** RFC 5545, 3.6: a calendar holds at least one component; the parser that is not ours says so of one without. */
    @Test
    void thereIsNoCalendarWithoutAnEvent() throws ConfigException {
        for (int week = 0; week < 6; week++) {
            outing(START.plusWeeks(week).plusDays(1), 8);
        }
        LocalDate sunday = START.plusWeeks(6).minusDays(1);
        ServiceState state = state(plan(task("oil", "pulls = 5")), sunday, sunday.minusDays(1));

        assertEquals(Optional.empty(), Calendar.render(state));
        assertFalse(Biweekly.parse("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nEND:VCALENDAR\r\n")
                .first()
                .validate(biweekly.ICalVersion.V2_0)
                .isEmpty());
    }

    private static LocalDate localDate(VEvent event) {
        biweekly.util.DateTimeComponents raw = event.getDateStart().getValue().getRawComponents();
        return LocalDate.of(raw.getYear(), raw.getMonth(), raw.getDate());
    }
}
