package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.time.MonthDay;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.hours.HoursTable;
import tautlog.desk.hours.Period;
import tautlog.desk.hours.Row;
import tautlog.desk.progress.Progress;
import tautlog.usage.Coverage;
import tautlog.usage.MeterReading;
import tautlog.usage.TimeSum;

/** Meters over random histories are those of a slow and obvious version, to the sample and to the tick. */
class UseAgainstSlowTest {
    private static final int HISTORIES = Integer.getInteger("tautlog.histories", 24);
    private static final long MILLIHERTZ = 10_000;
    private static final long TICK_MILLIHERTZ = PlannedOuting.TICK_HZ * 1_000L;

    @TempDir
    Path folder;

    static UseSettings settings(int threads) {
        return new UseSettings(
                Optional.empty(), "test", Optional.empty(), threads, Progress.SILENT, java.time.Instant::now);
    }

    @Test
    void metersOfRandomHistoriesAreThoseOfASlowVersion() throws IOException {
        for (long seed = 0; seed < HISTORIES; seed++) {
            // given
            Path here = folder.resolve("history-" + seed);
            java.nio.file.Files.createDirectories(here);
            SlowUse slow = SlowUse.of(RandomHistory.write(here, seed));

            // when
            UseHistory history = UseHistory.of(RandomHistory.folders(here, seed), settings(2));

            // then
            Row total = total(history.outings());
            MeterReading meters = total.meters();
            String name = "seed " + seed + " " + history.notes();
            assertEquals(slow.pulls, meters.count("pull"), name);
            assertEquals(TimeSum.of(slow.pull, MILLIHERTZ), meters.pull(), name);
            assertEquals(TimeSum.of(slow.winching, MILLIHERTZ), meters.winching(), name);
            assertEquals(TimeSum.of(slow.held, MILLIHERTZ), meters.held(), name);
            for (int band = 0; band < slow.bands.length; band++) {
                assertEquals(
                        TimeSum.of(slow.bands[band], MILLIHERTZ), meters.bands().get(band), name);
            }
            assertEquals(TimeSum.of(slow.shaftTicks, TICK_MILLIHERTZ), meters.shaft(), name);
            assertEquals(
                    new Coverage(
                            TimeSum.of(slow.logged, MILLIHERTZ),
                            TimeSum.of(slow.missing, MILLIHERTZ),
                            TimeSum.of(slow.withoutShaftTicks, TICK_MILLIHERTZ)),
                    total.coverage(),
                    name);
        }
    }

    @Test
    void sumsDoNotDependOnHowOutingsAreGroupedOrOrderedOrByHowManyTheyWereRead() throws IOException {
        for (long seed = 100; seed < 100 + HISTORIES / 4; seed++) {
            // given
            Path here = folder.resolve("history-" + seed);
            java.nio.file.Files.createDirectories(here);
            RandomHistory.write(here, seed);
            List<Path> folders = RandomHistory.folders(here, 0);

            // when
            List<OutingUse> uses = UseHistory.of(folders, settings(1)).outings();
            List<OutingUse> dated =
                    uses.stream().filter(use -> use.start().isPresent()).toList();
            List<OutingUse> shuffled = new ArrayList<>(dated);
            Collections.shuffle(shuffled, new Random(seed));

            // then
            assertEquals(uses, UseHistory.of(folders, settings(7)).outings());
            HoursTable table =
                    HoursTable.of(dated, ZoneId.of("America/New_York"), MonthDay.of(10, 1), HoursTable.Extent.WHOLE);
            for (Period period : Period.values()) {
                Row sum = Row.sum("total", table.rows(period));
                assertEquals(total(shuffled), sum, period + " of seed " + seed);
            }
        }
    }

    private static Row total(List<OutingUse> uses) {
        return HoursTable.of(uses, ZoneOffset.UTC, MonthDay.of(1, 1), HoursTable.Extent.WHOLE)
                .total();
    }
}
