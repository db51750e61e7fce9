package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.desk.hours.HoursPage;
import tautlog.desk.hours.HoursTable;
import tautlog.desk.report.Report;
import tautlog.rig.Opening;

class HoursSectionTest {
    private static Report.Hours hours(OptionalDouble shaft, double joint) {
        return new Report.Hours(
                shaft, 0, shaft, shaft, OptionalDouble.of(joint), true, List.of(0.0, 0.0, 0.0, 0.0, 0.0));
    }

    private static String hoursPage(Report.Hours hours, Opening opening) {
        HoursTable.Row row = new HoursTable.Row("total", Optional.empty(), Optional.empty(), hours, Map.of(), false);
        HoursTable table = new HoursTable(List.of(), List.of(), row, 0, Optional.of(opening));
        return TextPage.render(HoursPage.of(table, ZoneOffset.UTC, List.of()), Ink.PLAIN)
                .replaceAll("\\s+", " ");
    }

    @Test
    void upperBoundIsNeverShownBelowItself() {
        assertEquals("at most 0.002 h", HoursSection.joint(hours(OptionalDouble.of(1), 0.001369)));
        assertEquals("at most 0.001 h", HoursSection.joint(hours(OptionalDouble.of(1), 0.000001)));
        assertEquals("at most 0.003 h", HoursSection.joint(hours(OptionalDouble.of(1), 0.003)));
    }

    @Test
    void hoursSayTheSameBoundAsTheReport() {
        String page = hoursPage(hours(OptionalDouble.of(1), 0.001369), Opening.NONE);

        assertEquals(2, page.split("at most 0.002 h", -1).length, page);
    }

    @Test
    void shaftThatIsUnknownSinceTheOpeningReadingIsNotCountedFromIt() {
        String page = hoursPage(
                hours(OptionalDouble.empty(), 0),
                new Opening(new java.math.BigDecimal("412"), java.math.BigDecimal.ZERO, 0));

        assertEquals(2, page.split("Shaft: 412 h before the first recording; since then not known.", -1).length, page);
    }
}
