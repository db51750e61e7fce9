package tautlog.desk.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Question;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.pyramid.Band;
import tautlog.desk.report.JsonReport;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;

class SeasonWatchTest {
    private static final long START = SampleDay.START.getEpochSecond() * 1_000_000;

    @TempDir
    Path folder;

    private SeasonWatch watch() {
        return new SeasonWatch(folder, ZoneId.of("UTC"), Optional.empty(), Offer.NONE, IndexFolder.of(folder, folder));
    }

    private static void await(String what, BooleanSupplier condition) throws InterruptedException {
        for (int i = 0; i < 2_400 && !condition.getAsBoolean(); i++) {
            Thread.sleep(50);
        }
        assertTrue(condition.getAsBoolean(), what);
    }

    private static DayKey day(int ofMay) {
        return new DayKey("upper-landing", Optional.of(LocalDate.of(2026, 5, ofMay)));
    }

    @Test
    void saysOfItsDaysWhatTheReportSays() throws Exception {
        SampleDay.write(folder, "a.tautlog", 7, 0);
        SampleDay.write(folder, "b.tautlog", 8, 86_400);
        Files.copy(folder.resolve("b.tautlog"), folder.resolve("copy.tautlog"));
        JsonArray pulls = new JsonArray();
        JsonArray overloads = new JsonArray();

        try (SeasonWatch watch = watch()) {
            await("all is worked out", () -> watch.progress().isDone());
            for (int ofMay : new int[] {4, 5}) {
                JsonObject report = watch.days()
                        .record(day(ofMay), WhatIf.NOTHING)
                        .orElseThrow()
                        .report();
                pulls.addAll(report.getAsJsonArray("pulls"));
                overloads.addAll(report.getAsJsonArray("overloads"));
                JsonObject line =
                        watch.days().summary(day(ofMay), WhatIf.NOTHING).orElseThrow();
                assertEquals(
                        report.getAsJsonArray("pulls").size(), line.get("pulls").getAsInt());
                assertEquals(2, line.get("overloads").getAsInt());
            }
            assertEquals(2, watch.season().days().size());
        }

        try (History history = History.open(List.of(folder.resolve("a.tautlog"), folder.resolve("b.tautlog")))) {
            JsonObject whole = JsonParser.parseString(JsonReport.render(
                            Analysis.of(history, Question.AS_RECORDED).report(), Optional.empty(), List.of()))
                    .getAsJsonObject();
            assertEquals(unnumbered(whole.getAsJsonArray("pulls")), unnumbered(pulls));
            assertEquals(unnumbered(whole.getAsJsonArray("overloads")), unnumbered(overloads));
        }
    }

    /** Outings are counted from 1 among those asked for: of a day, of a season. */
    private static JsonArray unnumbered(JsonArray findings) {
        findings.forEach(one -> one.getAsJsonObject().remove("outing"));
        return findings;
    }

    @Test
    void keepsWhatItWorkedOutAndWorksItOutAnewForAnotherRecording() throws Exception {
        Path file = SampleDay.write(folder, "a.tautlog", 7, 0);
        String stamp;
        try (SeasonWatch watch = watch()) {
            await("all is worked out", () -> watch.progress().isDone());
            stamp = watch.days().record(day(4), WhatIf.NOTHING).orElseThrow().stamp();
        }
        long kept = Files.list(folder.resolve(IndexFolder.NAME)).count();
        assertEquals(2, kept, "a pyramid and a day");
        try (SeasonWatch again = watch()) {
            await("all is known", () -> again.progress().isDone());
            assertEquals(
                    stamp,
                    again.days().record(day(4), WhatIf.NOTHING).orElseThrow().stamp());
        }
        Files.delete(file);
        SampleDay.write(folder, "a.tautlog", 9, 0);
        try (SeasonWatch other = watch()) {
            await(
                    "the other is worked out",
                    () -> other.days()
                            .record(day(4), WhatIf.NOTHING)
                            .map(record -> !record.stamp().equals(stamp))
                            .orElse(false));
        }
    }

    @Test
    void whatIfIsAnotherAnswerAndSaysSo() throws Exception {
        SampleDay.write(folder, "a.tautlog", 7, 0);
        WhatIf corner = new WhatIf(Optional.of("round-the-corner"), false, false);
        WhatIf none = new WhatIf(Optional.of("no-such-hookup"), false, false);
        try (SeasonWatch watch = watch()) {
            watch.ask(Optional.of(day(4)), corner);
            watch.ask(Optional.of(day(4)), none);
            await(
                    "what if",
                    () -> watch.days().record(day(4), none).isPresent()
                            && watch.days().record(day(4), corner).isPresent()
                            && watch.progress().isDone());
            JsonObject line = watch.days().summary(day(4), corner).orElseThrow();
            assertFalse(line.getAsJsonArray("what_if").isEmpty());
            assertTrue(watch.days()
                    .summary(day(4), none)
                    .orElseThrow()
                    .get("failed")
                    .getAsString()
                    .contains("no hookup"));
            Trace trace = new Trace(watch);
            TraceView recorded = view(trace, WhatIf.NOTHING);
            assertEquals(
                    List.of("straight", "round-the-corner"),
                    recorded.steps().stream().map(TraceView.Step::hookup).toList());
            assertEquals(SampleDay.LIMIT_NEWTONS, recorded.steps().get(0).limitNewtons(), 1e-6);
            assertEquals(
                    List.of("round-the-corner"),
                    view(trace, corner).steps().stream()
                            .map(TraceView.Step::hookup)
                            .toList());
            TraceView unknown = view(trace, none);
            assertEquals(List.of(), unknown.steps(), "a limit that is not known is not shown");
            assertEquals(
                    TraceView.State.WITHOUT_THAT_HOOKUP,
                    unknown.outings().get(0).state());
        }
    }

    @Test
    void anotherCalibrationIsInTraceAndDay() throws Exception {
        SampleDay.write(folder, "a.tautlog", 7, 0);
        Offer twice = new Offer(
                Optional.empty(), Optional.of(CellCalibration.written(Calibration.of("0", "2"))), "twice as much");
        WhatIf asked = new WhatIf(Optional.empty(), false, true);
        try (SeasonWatch watch =
                new SeasonWatch(folder, ZoneId.of("UTC"), Optional.empty(), twice, IndexFolder.of(folder, folder))) {
            watch.ask(Optional.of(day(4)), asked);
            await(
                    "what if",
                    () -> watch.progress().isDone()
                            && watch.days().record(day(4), asked).isPresent());
            Trace trace = new Trace(watch);
            Band recorded = view(trace, WhatIf.NOTHING).tension();
            Band other = view(trace, asked).tension();
            assertEquals(
                    2 * recorded.greatest(recorded.greatestColumn()), other.greatest(other.greatestColumn()), 1e-9);
            assertTrue(watch.days()
                    .summary(day(4), asked)
                    .orElseThrow()
                    .getAsJsonArray("what_if")
                    .toString()
                    .contains("Another calibration"));
        }
    }

    private static TraceView view(Trace trace, WhatIf whatIf) throws Exception {
        return trace.view(
                new TraceAsk("upper-landing", START - 1_000_000, START + 80_000_000, 300, Optional.empty(), whatIf));
    }

    @Test
    void followsARecordingWhileItIsWritten() throws Exception {
        try (SeasonWatch watch = watch();
                RecordingWriter writer = RecordingWriter.open(folder.resolve("live.tautlog"), "upper-landing")) {
            OutingWriter outing = writer.begin(SampleDay.start());
            outing.clock(0, START);
            outing.hookup(0, "straight", HookupSource.MARK);
            Trace trace = new Trace(watch);
            for (int second = 1; second <= 3; second++) {
                int[] counts = new int[500];
                counts[250] = second * 1_000;
                outing.tension((second - 1) * 500L, (second - 1) * 1_000_000L, 0, counts, 0, 500);
                outing.commit();
                long expected = second * 500L;
                await("second " + second, () -> samples(trace) == expected);
                Band band = view(trace, WhatIf.NOTHING).tension();
                assertEquals(second * 1_000, band.greatest(band.greatestColumn()));
                assertTrue(view(trace, WhatIf.NOTHING).outings().get(0).open());
            }
            outing.end();
            outing.commit();
            await("closed", () -> watch.season().outings().get(0).outing().closed());
        }
    }

    private static long samples(Trace trace) {
        try {
            Band band = view(trace, WhatIf.NOTHING).tension();
            long sum = 0;
            for (int i = 0; i < band.columns(); i++) {
                sum += band.samples(i);
            }
            return sum;
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void namesWhatCannotBeReadAndGoesOn() throws Exception {
        SampleDay.write(folder, "a.tautlog", 7, 0);
        Files.writeString(folder.resolve("torn.tautlog"), "nonsense");
        try (SeasonWatch watch = watch()) {
            await("the rest is worked out", () -> watch.progress().isDone());
            assertTrue(watch.season().leftOut().sentences().get(0).startsWith("torn.tautlog"));
        }
    }

    @Test
    void anEmptyFolderIsWatchedUntilARecordingComes() throws Exception {
        try (SeasonWatch watch = watch()) {
            await("it looked", () -> watch.progress().looked());
            assertEquals(0, watch.progress().outings());
            SampleDay.write(folder, "a.tautlog", 7, 0);
            await("the day", () -> watch.progress().daysKnown() == 1);
        }
    }
}
