package tautlog.desk.hours;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tautlog.desk.analysis.Study;
import tautlog.desk.report.HourSum;
import tautlog.desk.report.Report;
import tautlog.detect.Finding;
import tautlog.rig.Opening;

/**
 * Meters by outing, by local day and in all.
 *
 * @param undated outings without a clock: in the total, in no day
 * @param opening what the winch had done before the first recording, by the latest rig; empty for several winches: one
 *     winch's reading must not stand before the sum of several
 */
public record HoursTable(List<Row> outings, List<Row> days, Row total, int undated, Optional<Opening> opening) {
    public HoursTable {
        outings = List.copyOf(outings);
        days = List.copyOf(days);
    }

    /**
     * Meters of some time.
     *
     * @param name what it is: a file and outing, a day, or everything
     * @param start empty while it has no clock
     * @param counts findings by their kind
     * @param fromSaidLive pulls of it are those said on the day, because readings were thinned
     */
    public record Row(
            String name,
            Optional<Instant> start,
            Optional<Instant> end,
            Report.Hours hours,
            Map<String, Long> counts,
            boolean fromSaidLive) {
        public Row {
            counts = Collections.unmodifiableMap(new TreeMap<>(counts));
        }

        public long count(String kind) {
            return counts.getOrDefault(kind, 0L);
        }
    }

    /** @param zone whose days count */
    public static HoursTable of(List<Study> studies, ZoneId zone) {
        List<Row> outings = studies.stream().map(HoursTable::outing).toList();
        Map<LocalDate, List<Row>> byDay = new TreeMap<>();
        for (Row row : outings) {
            row.start()
                    .map(start -> start.atZone(zone).toLocalDate())
                    .ifPresent(day ->
                            byDay.computeIfAbsent(day, of -> new ArrayList<>()).add(row));
        }
        List<Row> days = byDay.entrySet().stream()
                .map(day -> sum(day.getKey().toString(), day.getValue()))
                .toList();
        int undated =
                (int) outings.stream().filter(row -> row.start().isEmpty()).count();
        long winches =
                studies.stream().map(study -> study.member().winch()).distinct().count();
        Optional<Opening> opening = winches != 1
                ? Optional.empty()
                : Optional.of(studies.get(studies.size() - 1).rig().opening());
        return new HoursTable(outings, days, sum("total", outings), undated, opening);
    }

    private static Row outing(Study study) {
        Map<String, Long> counts = new LinkedHashMap<>();
        for (Finding finding : study.findings()) {
            counts.merge(finding.kind(), 1L, Long::sum);
        }
        return new Row(
                study.member().file().getFileName() + " #"
                        + (study.member().outing().index() + 1),
                study.times().utc(study.member().outing().firstTick()),
                study.times().utc(study.member().outing().lastTick()),
                study.hours(),
                counts,
                study.member().outing().thinned());
    }

    private static Row sum(String name, List<Row> rows) {
        Map<String, Long> counts = new LinkedHashMap<>();
        rows.forEach(row -> row.counts().forEach((kind, n) -> counts.merge(kind, n, Long::sum)));
        return new Row(
                name,
                rows.stream().flatMap(row -> row.start().stream()).min(Instant::compareTo),
                rows.stream().flatMap(row -> row.end().stream()).max(Instant::compareTo),
                HourSum.of(rows.stream().map(Row::hours).toList()),
                counts,
                rows.stream().anyMatch(Row::fromSaidLive));
    }
}
