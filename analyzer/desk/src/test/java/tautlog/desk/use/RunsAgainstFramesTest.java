package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.DayReading;
import tautlog.desk.analysis.EndOnce;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Tee;
import tautlog.desk.fixtures.SampleDay;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.recording.Damage;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroSource;
import tautlog.usage.Coverage;
import tautlog.usage.Hours;
import tautlog.usage.MachineMeter;
import tautlog.usage.TimeSum;

/** What {@link UsePass} says of an outing read by runs is what the same detectors and meters say of it frame by frame. */
class RunsAgainstFramesTest {
    private static final int OUTINGS = Integer.getInteger("tautlog.outings", 30);

    @TempDir
    Path folder;

    /** By frames, for a whole outing whose readings are there and that has a clock. */
    private static OutingUse byFrames(History.Member member) throws IOException, ConfigException {
        Outing outing = member.outing();
        DayReading day = DayReading.of(member, 1);
        Instrument instrument = day.instrument();
        Hours hours = new Hours(instrument, day.rig(), day.calibration());
        MachineMeter machine = new MachineMeter(instrument, day.rig(), day.calibration());
        PresentSamples present = new PresentSamples(instrument);
        UseCollector collector =
                new UseCollector(hours, machine, instrument.tickHz(), outing.firstTick(), outing.lastTick());
        EndOnce once = new EndOnce(new Detection(instrument, day.rig(), day.calibration(), collector));

        List<Damage> damages =
                member.recording().replay(outing, day.lessZero(member, new Tee(once, present, machine.samples())));
        once.end();

        List<UseEvent> events = collector.events().stream()
                .sorted(Comparator.comparingLong(Finding::startNumber).thenComparing(Finding::kind))
                .map(found -> new UseEvent(
                        found.kind(), found.startNumber(), day.times().utc(present.tickOf(found.startNumber()))))
                .toList();
        Map<Long, Instant> starts = new HashMap<>();
        events.forEach(event -> starts.put(event.number(), event.start().orElseThrow()));
        return new OutingUse(
                new OutingPlace(
                        member.winch(), member.recordingId(), member.file().toString(), outing.index()),
                day.times().utc(outing.firstTick()),
                day.times().utc(outing.lastTick()),
                outing.samples(),
                new OutingUse.Nature(false, false, outing.ended()),
                day.rig().opening(),
                hours.reading(),
                coverage(outing, instrument, present, collector),
                machine.use(number -> starts.containsKey(number)
                        ? OptionalLong.of(ChronoUnit.MICROS.between(Instant.EPOCH, starts.get(number)))
                        : OptionalLong.empty()),
                events,
                damages.stream().map(Damage::summary).toList());
    }

    private static Coverage coverage(
            Outing outing, Instrument instrument, PresentSamples present, UseCollector collector) {
        long numbers = outing.lastNumber() - outing.firstNumber() + 1;
        long missing = numbers - present.numbersUpTo(outing.lastNumber()) + present.missingUpTo(outing.lastNumber());
        return new Coverage(
                TimeSum.of(numbers, instrument.rateMillihertz()),
                TimeSum.of(missing, instrument.rateMillihertz()),
                TimeSum.of(collector.ticksWithoutShaft(), instrument.tickHz() * 1_000));
    }

    /** Returns what both say. */
    private static OutingUse assertSame(Path file) throws IOException, ConfigException {
        try (Recording recording = Recording.open(file)) {
            History.Member member = new History.Member(
                    file,
                    recording,
                    "upper",
                    recording.id(),
                    recording.outings().get(0));
            OutingUse frames = byFrames(member);

            OutingUse runs = UsePass.of(member, new StoredRigs(), Optional.empty(), Optional.empty())
                    .use();

            String name = file.getFileName().toString();
            assertEquals(frames.events(), runs.events(), name);
            assertEquals(frames.meters(), runs.meters(), name);
            assertEquals(frames.coverage(), runs.coverage(), name);
            assertEquals(frames.machine(), runs.machine(), name);
            assertEquals(frames, runs, name);
            return runs;
        }
    }

    @Test
    void randomOutingsAreMeteredTheSameByRunsAsByFrames() throws IOException, ConfigException {
        int events = 0;
        for (long seed = 0; seed < OUTINGS; seed++) {
            events += assertSame(RandomOuting.write(folder, seed)).events().size();
        }
        assertTrue(events > OUTINGS, events + " events");
    }

    /** The zero moves among samples that mean nothing, and is told to move again later: in between the first one holds. */
    @Test
    void aZeroThatMovedUnderAnOpenBridgeHoldsUntilTheNextMoves() throws IOException, ConfigException {
        // given
        Path file = folder.resolve("open.tautlog");
        int[] counts = new int[100];
        java.util.Arrays.fill(counts, 15_000);
        try (RecordingWriter recording = RecordingWriter.open(file, "upper")) {
            OutingWriter outing = recording.begin(new OutingStart(
                    SampleDay.instrument(1),
                    SampleDay.rigToml(),
                    CellCalibration.written(Calibration.of("0", "1")),
                    "tautlogd test",
                    OutingStart.Source.INSTRUMENT));
            outing.clock(0, 1_772_442_000_000_000L);
            outing.zero(50, 14_950, ZeroSource.SLACK);
            outing.tension(0, 0, 2, counts, 0, 100);
            outing.zero(190, 0, ZeroSource.SLACK);
            for (int frame = 1; frame < 4; frame++) {
                outing.tension(frame * 100L, frame * 1_000_000L, 0, counts, 0, 100);
            }
            outing.end();
            outing.commit();
        }

        // when, then
        assertSame(file);
    }
}
