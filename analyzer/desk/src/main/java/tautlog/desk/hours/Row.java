package tautlog.desk.hours;

import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import tautlog.desk.report.Report;
import tautlog.desk.use.OutingUse;
import tautlog.usage.Coverage;
import tautlog.usage.MeterReading;

/**
 * Meters of some time.
 *
 * @param name what it is: a file and outing, a day, or everything
 * @param start empty while nothing of it has a clock
 * @param coverage how much of it is known
 * @param fromSaidLive pulls of it are those said on the day, because readings were thinned
 */
public record Row(
        String name,
        Optional<Instant> start,
        Optional<Instant> end,
        MeterReading meters,
        Coverage coverage,
        boolean fromSaidLive) {
    static Row of(OutingUse use) {
        return new Row(
                java.nio.file.Path.of(use.at().file()).getFileName() + " #"
                        + (use.at().outing() + 1),
                use.start(),
                use.end(),
                use.meters(),
                use.coverage(),
                use.nature().thinned());
    }

    /** Rows added up, exactly: however they are grouped. */
    public static Row sum(String name, Collection<Row> rows) {
        return new Row(
                name,
                rows.stream().flatMap(row -> row.start.stream()).min(Comparator.naturalOrder()),
                rows.stream().flatMap(row -> row.end.stream()).max(Comparator.naturalOrder()),
                rows.stream().map(Row::meters).reduce(MeterReading.NONE, MeterReading::plus),
                rows.stream().map(Row::coverage).reduce(Coverage.NONE, Coverage::plus),
                rows.stream().anyMatch(Row::fromSaidLive));
    }

    public long count(String kind) {
        return meters.count(kind);
    }

    /** The meters in hours. */
    public Report.Hours hours() {
        return new Report.Hours(
                meters.shaftHours(),
                meters.pullHours(),
                meters.winchingHours(),
                meters.heldHours(),
                meters.jointHours(),
                meters.jointHoursAreAtMost(),
                meters.bandHours(),
                meters.shaftIsAtLeast());
    }
}
