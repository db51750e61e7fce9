package tautlog.desk.hours;

import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tautlog.desk.use.OutingUse;
import tautlog.rig.Opening;

/**
 * Meters by outing, by local day, month and season, and in all.
 *
 * @param periods of each {@link Period} its rows in the order of time; without those outings that have no clock
 * @param undated outings without a clock: in the total, in no day
 * @param opening what the winch had done before the first recording, by the latest rig; empty for several winches (one
 *     winch's reading must not stand before the sum of several), for none, and when what is shown is only a part
 * @param unlogged what a ledger tells of work that was not recorded: in no row
 */
public record HoursTable(
        List<Row> outings,
        Map<Period, List<Row>> periods,
        Row total,
        int undated,
        Optional<Opening> opening,
        Unlogged unlogged) {
    public HoursTable {
        outings = List.copyOf(outings);
        periods = Map.copyOf(periods);
    }

    /**
     * Adds up.
     *
     * @param uses in the order of time
     * @param zone whose days count
     * @param seasonFrom the day on which a season begins; 1 January for calendar years
     */
    public static HoursTable of(List<OutingUse> uses, ZoneId zone, MonthDay seasonFrom, Extent extent) {
        List<Row> outings = uses.stream().map(Row::of).toList();
        Map<Period, List<Row>> periods = new EnumMap<>(Period.class);
        for (Period period : Period.values()) {
            periods.put(period, rows(outings, period, zone, seasonFrom));
        }
        int undated =
                (int) outings.stream().filter(row -> row.start().isEmpty()).count();
        return new HoursTable(
                outings, periods, Row.sum("total", outings), undated, opening(uses, extent), Unlogged.NONE);
    }

    /** The same, and this work beside it. */
    public HoursTable with(Unlogged work) {
        return new HoursTable(outings, periods, total, undated, opening, work);
    }

    /** Whether all of the recordings is added up. */
    public enum Extent {
        WHOLE,
        PART
    }

    private static List<Row> rows(List<Row> outings, Period period, ZoneId zone, MonthDay seasonFrom) {
        Map<String, Collection<Row>> byName = new TreeMap<>();
        for (Row row : outings) {
            row.start()
                    .map(start -> period.of(start, zone, seasonFrom))
                    .ifPresent(name -> byName.computeIfAbsent(name, of -> new ArrayList<>())
                            .add(row));
        }
        return byName.entrySet().stream()
                .map(entry -> Row.sum(entry.getKey(), entry.getValue()))
                .toList();
    }

    private static Optional<Opening> opening(List<OutingUse> uses, Extent extent) {
        long winches = uses.stream().map(use -> use.at().winch()).distinct().count();
        return winches != 1 || extent == Extent.PART
                ? Optional.empty()
                : Optional.of(uses.get(uses.size() - 1).opening());
    }

    public List<Row> days() {
        return rows(Period.DAY);
    }

    public List<Row> rows(Period period) {
        return periods.getOrDefault(period, List.of());
    }
}
