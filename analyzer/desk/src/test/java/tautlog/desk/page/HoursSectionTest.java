package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.ZoneOffset;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.desk.hours.HoursPage;
import tautlog.desk.hours.HoursTable;
import tautlog.desk.hours.Row;
import tautlog.desk.hours.Unlogged;
import tautlog.desk.report.Report;
import tautlog.rig.Opening;
import tautlog.usage.Coverage;
import tautlog.usage.MeterReading;
import tautlog.usage.TimeSum;

class HoursSectionTest {
    private static Report.Hours hours(OptionalDouble shaft, double joint) {
        return new Report.Hours(
                shaft, 0, shaft, shaft, OptionalDouble.of(joint), true, List.of(0.0, 0.0, 0.0, 0.0, 0.0));
    }

    private static MeterReading reading(int withShaft, long jointNanos) {
        return new MeterReading(
                1,
                withShaft,
                withShaft,
                TimeSum.of(3_600, 1_000),
                TimeSum.ZERO,
                TimeSum.ZERO,
                TimeSum.ZERO,
                Collections.nCopies(5, TimeSum.ZERO),
                jointNanos,
                true,
                Map.of());
    }

    private static String hoursPage(MeterReading reading, Opening opening) {
        Row row = new Row("total", Optional.empty(), Optional.empty(), reading, Coverage.NONE, false);
        HoursTable table = new HoursTable(List.of(), Map.of(), row, 0, Optional.of(opening), Unlogged.NONE);
        HoursPage.Look look = new HoursPage.Look(ZoneOffset.UTC, true, List.of(), List.of());
        return TextPage.render(HoursPage.of(table, look, List.of()), Ink.PLAIN).replaceAll("\\s+", " ");
    }

    @Test
    void upperBoundIsNeverShownBelowItself() {
        assertEquals("at most 0.002 h", HoursSection.joint(hours(OptionalDouble.of(1), 0.001369)));
        assertEquals("at most 0.001 h", HoursSection.joint(hours(OptionalDouble.of(1), 0.000001)));
        assertEquals("at most 0.003 h", HoursSection.joint(hours(OptionalDouble.of(1), 0.003)));
    }

    @Test
    void hoursSayTheSameBoundAsTheReport() {
        String page = hoursPage(reading(1, 4_928_400_000L), Opening.NONE);

        assertEquals(2, page.split("at most 0.002 h", -1).length, page);
    }

    @Test
    void shaftThatIsUnknownSinceTheOpeningReadingIsNotCountedFromIt() {
        String page =
                hoursPage(reading(0, 0), new Opening(new java.math.BigDecimal("412"), java.math.BigDecimal.ZERO, 0));

        assertEquals(2, page.split("Shaft: 412 h before the first recording; since then not known.", -1).length, page);
    }
}
