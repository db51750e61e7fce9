package tautlog.desk.analysis;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.uncertainty.Doubt;
import tautlog.desk.uncertainty.FastPeaks;
import tautlog.desk.uncertainty.NearPeaks;
import tautlog.desk.uncertainty.SlackStudy;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.recording.Damage;
import tautlog.recording.Outing;
import tautlog.recording.RecordingException;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

/** Runs the detectors over one outing, with the rig of the day or another. */
final class OutingPass {
    private final History.Member member;
    private final int ordinal;
    private final Question question;

    OutingPass(History.Member member, int ordinal, Question question) {
        this.member = member;
        this.ordinal = ordinal;
        this.question = question;
    }

    Study study() throws RecordingException, QuestionException {
        Outing outing = member.outing();
        Instrument instrument = outing.start().instrument();
        Optional<Rig> ofTheDay = rigOfTheDay();
        Rig rig = question.rig().or(() -> ofTheDay).orElseThrow();
        Optional<Hookup> forced = forced(rig);
        CellCalibration cell = question.calibrationOf(outing);
        Calibration calibration = member.lineCalibration(cell, rig);
        OutingTimes times = new OutingTimes(member.recording(), outing, ordinal);
        FindingCollector collector = new FindingCollector(instrument, rig, calibration, ticks(times));
        TrustCount trust = new TrustCount(instrument, rig, calibration);
        HookupTrack hookups = new HookupTrack(rig);
        MarkTrack marks = new MarkTrack();
        SlackStudy slack = new SlackStudy(instrument, rig, calibration);
        Detection detection = new Detection(instrument, rig, calibration, collector);
        EndOnce all = new EndOnce(new Tee(detection, trust, marks, turns(hookups), slack));
        HookupChoice choice = new HookupChoice(rig, forced, times.notingPlaces(member.lessZero(calibration, all)));
        LiveSpeech live = LiveSpeech.of(member.recording(), outing);
        List<Damage> damages = member.recording().replay(outing, choice);
        LiveSpeech now = collector.speech();
        all.end();
        NearPeaks nearPeaks = new NearPeaks(slack, collector.findings());
        FastPeaks fastPeaks = new FastPeaks(calibration, collector.findings());
        if (nearPeaks.isNeeded() || fastPeaks.isNeeded()) {
            member.recording().replay(outing, member.lessZero(calibration, new Tee(nearPeaks, fastPeaks)));
        }
        List<Finding> found = outing.thinned() ? member.recording().findings(outing) : collector.findings();
        List<Finding> findings = included(found, times);
        List<String> differences = differences(ofTheDay, rig, forced, choice);
        OtherCalibration.difference(outing.start().calibration(), cell).ifPresent(differences::add);
        requireReadings(outing, differences);
        boolean comparable = differences.isEmpty() && damages.isEmpty() && !outing.thinned();
        return new Study(
                ordinal,
                member,
                rig,
                calibration,
                times,
                differences,
                findings,
                hookups,
                choice.lost().stream()
                        .filter(lost -> question.overlaps(times.utc(lost.fromTick()), times.utc(lost.toTick())))
                        .toList(),
                trust,
                marks(marks).stream()
                        .filter(mark -> question.includes(times.utc(mark.tick())))
                        .toList(),
                outing.thinned() ? collector.hoursWithoutReadings(findings) : collector.hours(findings),
                damages,
                live.with(now, LiveSpeech.of(member.recording(), outing), comparable),
                new Doubt(
                        instrument,
                        cell,
                        calibration,
                        rig,
                        member.cellCarriesMore(),
                        slack,
                        zero(outing, trust),
                        fastPeaks,
                        nearPeaks));
    }

    /** What was said live holds for the day's rig, hookups and calibration only. */
    private void requireReadings(Outing outing, List<String> differences) throws RecordingException {
        if (outing.thinned() && !differences.isEmpty()) {
            throw Refusals.thinned(member.file());
        }
    }

    private static Doubt.Zero zero(Outing outing, TrustCount trust) {
        if (outing.thinned()) {
            return Doubt.Zero.THINNED;
        }
        return trust.isZeroProven() ? Doubt.Zero.PROVEN : Doubt.Zero.UNPROVEN;
    }

    private List<MarkTrack.MarkAt> marks(MarkTrack marks) throws RecordingException {
        return member.outing().thinned() ? marks.marksOfThinned(member) : marks.marks();
    }

    private static QuietEvidence turns(HookupTrack hookups) {
        return new QuietEvidence() {
            @Override
            public void hookup(long atNumber, String id, HookupSource by) {
                hookups.turn(atNumber, id, by);
            }

            @Override
            public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
                hookups.present(number, n);
            }
        };
    }

    private FindingCollector.Ticks ticks(OutingTimes times) {
        return question.isWhole() ? tick -> true : tick -> question.includes(times.utc(tick));
    }

    /** Empty when it cannot be read; then the question gives another. */
    private Optional<Rig> rigOfTheDay() throws RecordingException {
        try {
            return Optional.of(
                    Rig.parse("rig in " + member.file(), member.outing().start().rigToml()));
        } catch (ConfigException e) {
            if (question.rig().isPresent()) {
                return Optional.empty();
            }
            throw Refusals.rig(member.file(), e);
        }
    }

    private Optional<Hookup> forced(Rig rig) throws QuestionException {
        if (question.hookup().isEmpty()) {
            return Optional.empty();
        }
        String id = question.hookup().get();
        Optional<Hookup> hookup = rig.hookup(id);
        if (hookup.isEmpty()) {
            throw new QuestionException("The rig has no hookup \"" + id + "\".\n  It has: "
                    + String.join(", ", rig.hookups().stream().map(Hookup::id).toList()) + ".");
        }
        return hookup;
    }

    /** Those of which some lies in the time asked for, in the order of their starts. */
    private List<Finding> included(List<Finding> findings, OutingTimes times) throws RecordingException {
        List<Finding> included = new ArrayList<>();
        for (Finding finding : findings) {
            if (question.isWhole() || question.overlaps(utc(finding.startNumber(), times), end(finding, times))) {
                included.add(finding);
            }
        }
        included.sort(Comparator.comparingLong(Finding::startNumber));
        return included;
    }

    private static Optional<Instant> utc(long number, OutingTimes times) throws RecordingException {
        return times.ofNumber(number).utc();
    }

    private static Optional<Instant> end(Finding finding, OutingTimes times) throws RecordingException {
        return finding instanceof Finding.Stall stall ? times.utc(stall.endTick()) : utc(lastNumber(finding), times);
    }

    private static long lastNumber(Finding finding) {
        if (finding instanceof Finding.Pull pull) {
            return pull.endNumber();
        } else if (finding instanceof Finding.Overload overload) {
            return overload.endNumber();
        } else if (finding instanceof Finding.Shock shock) {
            return shock.peakNumber();
        } else if (finding instanceof Finding.Jolt jolt) {
            return jolt.peakNumber();
        } else if (finding instanceof Finding.Drop drop) {
            return drop.fallNumber();
        } else if (finding instanceof Finding.Trouble trouble) {
            return trouble.endNumber();
        }
        return finding.startNumber();
    }

    private static List<String> differences(
            Optional<Rig> ofTheDay, Rig rig, Optional<Hookup> forced, HookupChoice choice) {
        List<String> differences = new ArrayList<>();
        if (ofTheDay.isEmpty()) {
            differences.add("The rig stored in the recording cannot be read; another is used.");
        } else if (!rig.equals(ofTheDay.get())) {
            differences.add("Another rig is used than the one stored in the recording.");
        }
        if (choice.differs() && forced.isPresent()) {
            differences.add(
                    "Hookup " + forced.get().id() + " is taken to be on all the time (asked for with --hookup).");
        }
        for (String id : choice.unknown()) {
            differences.add("Hookup " + id + " of the day is not in this rig: another one of it stands in.");
        }
        return differences;
    }
}
