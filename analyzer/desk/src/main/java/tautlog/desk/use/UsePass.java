package tautlog.desk.use;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.DayReading;
import tautlog.desk.analysis.EndOnce;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Refusals;
import tautlog.desk.analysis.Tee;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.recording.Damage;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.rig.Rig;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroShift;
import tautlog.usage.Coverage;
import tautlog.usage.Hours;
import tautlog.usage.MachineMeter;
import tautlog.usage.MachineUse;
import tautlog.usage.MeterReading;
import tautlog.usage.SampleClock;
import tautlog.usage.TimeSum;

/** Runs the detectors once over one outing for what it was used for: no intervals, no chain, no comparison with what was said live. */
final class UsePass {
    private final History.Member member;
    private final Outing outing;
    private final Instrument instrument;
    private final DayReading day;
    private final Optional<Long> fromTick;
    private final PresentSamples present;
    private final Hours hours;
    private final MachineMeter machine;
    private final UseCollector collector;

    private UsePass(History.Member member, DayReading day, Optional<Instant> from) {
        this.member = member;
        this.outing = member.outing();
        this.day = day;
        instrument = day.instrument();
        present = new PresentSamples(instrument);
        fromTick = from.map(this::tickAt);
        hours = new Hours(instrument, day.rig(), day.calibration());
        machine = new MachineMeter(instrument, day.rig(), day.calibration());
        collector = new UseCollector(
                hours, machine, instrument.tickHz(), fromTick.orElse(outing.firstTick()), outing.lastTick());
    }

    /**
     * Reads one outing.
     *
     * @param rigs knows the stored ones
     * @param otherRig in place of the stored one
     * @param from time before it is left out of all meters; overloads and what else calls for service are not
     * @throws RecordingException if its rig cannot be read, or its readings are gone and another rig is asked for
     */
    static ReadUse of(History.Member member, StoredRigs rigs, Optional<Rig> otherRig, Optional<Instant> from)
            throws RecordingException {
        if (otherRig.isPresent() && member.thinned()) {
            throw Refusals.thinned(member.file());
        }
        DayReading day = day(member, rigs, otherRig);
        ReadUse whole = new UsePass(member, day, Optional.empty()).read();
        return from.isEmpty() ? whole : new UsePass(member, day, from).read().withFindingsOf(whole);
    }

    private static DayReading day(History.Member member, StoredRigs rigs, Optional<Rig> otherRig)
            throws RecordingException {
        if (otherRig.isPresent()) {
            return DayReading.of(member, 1, otherRig.get());
        }
        try {
            String toml = member.outing().start().rigToml();
            return DayReading.of(member, 1, rigs.of(member.file(), toml));
        } catch (ConfigException e) {
            throw Refusals.rig(member.file(), e);
        }
    }

    /** The least tick from the outing's first on at {@code from} or later, perhaps behind its last. */
    private long tickAt(Instant from) {
        long below = outing.firstTick() - 1;
        long at = outing.lastTick();
        while (isBefore(at, from)) {
            at += at - below;
        }
        while (at - below > 1) {
            long middle = below + (at - below) / 2;
            if (isBefore(middle, from)) {
                below = middle;
            } else {
                at = middle;
            }
        }
        return at;
    }

    /** Only outings with a clock overlap others. */
    private boolean isBefore(long tick, Instant from) {
        return day.times().utc(tick).orElseThrow().isBefore(from);
    }

    private ReadUse read() throws RecordingException {
        Detection detection = new Detection(instrument, day.rig(), day.calibration(), collector);
        EndOnce once = new EndOnce(detection);
        Recording.Replayed replayed = member.recording()
                .replayWithFingerprint(outing, fromTick.isEmpty() ? byRuns(detection, once) : byFrames(once));
        once.end();
        if (outing.thinned()) {
            tellWhatWasSaid();
        }
        return new ReadUse(replayed.fingerprint(), use(replayed.damages()));
    }

    private OutingUse use(List<Damage> damages) throws RecordingException {
        List<UseEvent> events = events();
        return new OutingUse(
                new OutingPlace(
                        member.winch(), member.recordingId(), member.file().toString(), outing.index()),
                day.times().utc(Math.min(fromTick.orElse(outing.firstTick()), outing.lastTick())),
                day.times().utc(outing.lastTick()),
                outing.samples(),
                new OutingUse.Nature(
                        outing.start().source() == OutingStart.Source.IMPORT, outing.thinned(), outing.ended()),
                day.rig().opening(),
                meters(),
                coverage(),
                machine(events),
                events,
                damages.stream().map(Damage::summary).toList());
    }

    /** The fast way. */
    private Evidence byRuns(Detection detection, Evidence once) {
        ZeroShift zero = member.lessZero(day.calibration(), new Tee(once, machine.samples()));
        return new UseRuns(detection, present, machine.samples(), zero, day.hookups(zero));
    }

    private Evidence byFrames(Evidence once) {
        Evidence counted = new Tee(once, present, machine.samples());
        return day.hookups(member.lessZero(day.calibration(), new FromTick(fromTick.orElseThrow(), counted)));
    }

    private void tellWhatWasSaid() throws RecordingException {
        for (Finding finding : member.recording().findings(outing)) {
            if (fromTick.isEmpty() || day.times().tickOf(finding.startNumber()) >= fromTick.get()) {
                collector.finding(finding);
            }
        }
    }

    private MeterReading meters() {
        return outing.thinned() ? hours.reading().withoutJoint() : hours.reading();
    }

    private MachineUse machine(List<UseEvent> events) {
        Map<Long, Long> microsByNumber = new HashMap<>();
        events.forEach(event -> event.start()
                .ifPresent(at -> microsByNumber.put(event.number(), ChronoUnit.MICROS.between(Instant.EPOCH, at))));
        SampleClock clock = number ->
                microsByNumber.containsKey(number) ? OptionalLong.of(microsByNumber.get(number)) : OptionalLong.empty();
        return outing.thinned() ? machine.useWithoutReadings(clock) : machine.use(clock);
    }

    /** Of a thinned outing which numbers are missing is known, which samples meant nothing is not. */
    private Coverage coverage() {
        long numbers = present.numbersUpTo(outing.lastNumber());
        long missing = present.missingUpTo(outing.lastNumber());
        if (fromTick.isEmpty()) {
            long all = outing.lastNumber() - outing.firstNumber() + 1;
            missing = outing.thinned() ? all - outing.samples() : missing + all - numbers;
            numbers = all;
        }
        return new Coverage(
                TimeSum.of(numbers, instrument.rateMillihertz()),
                TimeSum.of(missing, instrument.rateMillihertz()),
                TimeSum.of(collector.ticksWithoutShaft(), instrument.tickHz() * 1_000));
    }

    private long tickOf(long number) throws RecordingException {
        return outing.thinned() ? day.times().tickOf(number) : present.tickOf(number);
    }

    private List<UseEvent> events() throws RecordingException {
        List<Finding> found = new ArrayList<>(collector.events());
        found.sort(Comparator.comparingLong(Finding::startNumber).thenComparing(Finding::kind));
        List<UseEvent> events = new ArrayList<>();
        for (Finding finding : found) {
            events.add(new UseEvent(
                    finding.kind(), finding.startNumber(), day.times().utc(tickOf(finding.startNumber()))));
        }
        return events;
    }
}
