package tautlog.desk.analysis;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import tautlog.desk.report.Derivation;
import tautlog.desk.report.Entry;
import tautlog.desk.report.HourSum;
import tautlog.desk.report.LeftOut;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.detect.Finding;
import tautlog.recording.OutingStart;
import tautlog.recording.RecordingException;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;

/** Puts the studies of all outings together into one report. */
final class ReportAssembly {
    private final History history;
    private final Question question;
    private final List<Study> studies;
    private final LeftOut leftOut;
    private final ChainCheck chain;
    private final List<Entry.Pull> pulls = new ArrayList<>();
    private final List<Entry.Overload> overloads = new ArrayList<>();
    private final List<Entry.Shock> shocks = new ArrayList<>();
    private final List<Entry.Jolt> jolts = new ArrayList<>();
    private final List<Entry.Drop> drops = new ArrayList<>();
    private final List<Entry.Stall> stalls = new ArrayList<>();
    private final List<Entry.Trouble> trouble = new ArrayList<>();
    private final List<Report.Mark> marks = new ArrayList<>();

    ReportAssembly(History history, Question question, List<Study> studies, LeftOut leftOut, ChainCheck chain) {
        this.history = history;
        this.question = question;
        this.studies = studies;
        this.leftOut = leftOut;
        this.chain = chain;
    }

    Report report() throws RecordingException {
        for (Study study : studies) {
            derive(study);
        }
        return new Report(
                sources(),
                hookups(),
                hookupsNotKnown(),
                pulls,
                overloads,
                shocks,
                jolts,
                drops,
                stalls,
                trouble,
                marks,
                HourSum.of(studies.stream().map(Study::hours).toList()),
                trust(),
                whatIf(),
                notes(),
                new BlindSpots(studies.stream().map(Study::rig).distinct().toList()).sentences(),
                leftOut);
    }

    private void derive(Study study) throws RecordingException {
        Derivation to = new Derivation(
                study.rig(),
                study.calibration(),
                study.member().outing().start().instrument().rate(),
                new OutingPlaces(study),
                study.doubt());
        List<Finding> all = study.findings();
        Derivation.each(all, Finding.Pull.class, to::pull, pulls);
        Derivation.each(all, Finding.Overload.class, to::overload, overloads);
        Derivation.each(all, Finding.Shock.class, to::shock, shocks);
        Derivation.each(all, Finding.Jolt.class, to::jolt, jolts);
        Derivation.each(all, Finding.Drop.class, to::drop, drops);
        Derivation.each(all, Finding.Stall.class, to::stall, stalls);
        Derivation.each(all, Finding.Trouble.class, to::trouble, trouble);
        study.marks().forEach(mark -> marks.add(new Report.Mark(study.times().ofTick(mark.tick()), mark.note())));
    }

    private List<Report.Source> sources() throws RecordingException {
        Map<Path, List<Study>> byFile = new LinkedHashMap<>();
        for (Study study : studies) {
            byFile.computeIfAbsent(study.member().file(), file -> new ArrayList<>())
                    .add(study);
        }
        return byFile.values().stream().map(ReportAssembly::source).toList();
    }

    private static Report.Source source(List<Study> ofOneFile) {
        History.Member first = ofOneFile.get(0).member();
        List<Moment> ends = ofOneFile.stream()
                .flatMap(study -> Stream.of(
                        study.times().ofTick(study.member().outing().firstTick()),
                        study.times().ofTick(study.member().outing().lastTick())))
                .toList();
        return new Report.Source(
                first.file().toString(),
                first.winch(),
                ends.stream().flatMap(end -> end.utc().stream()).min(Comparator.naturalOrder()),
                ends.stream().flatMap(end -> end.utc().stream()).max(Comparator.naturalOrder()),
                ofOneFile.stream().mapToLong(study -> study.trust().samples()).sum(),
                ofOneFile.stream()
                        .mapToDouble(study -> study.member()
                                .outing()
                                .start()
                                .instrument()
                                .rate()
                                .hertz())
                        .min()
                        .orElseThrow(),
                ofOneFile.size(),
                ofOneFile.stream()
                        .anyMatch(study -> study.member().outing().start().source() == OutingStart.Source.IMPORT));
    }

    private List<Report.HookupInForce> hookups() {
        Map<Hookup, Boolean> assumed = new LinkedHashMap<>();
        for (Study study : studies) {
            study.hookups().turns().forEach(turn -> assumed.merge(turn.hookup(), turn.assumed(), Boolean::logicalAnd));
        }
        return assumed.entrySet().stream()
                .map(entry -> new Report.HookupInForce(
                        entry.getKey().id(),
                        entry.getKey().limit().newtons().doubleValue(),
                        entry.getKey().limit().isAtMost(),
                        entry.getKey().limit().governing(),
                        entry.getValue() || isRestedOn(entry.getKey()),
                        entry.getKey().items().stream()
                                .map(LoadedItem::assumptions)
                                .distinct()
                                .toList()))
                .toList();
    }

    private List<Report.HookupNotKnown> hookupsNotKnown() {
        return studies.stream()
                .flatMap(study -> study.lostNamings().stream()
                        .map(lost -> new Report.HookupNotKnown(
                                study.times().ofTick(lost.fromTick()),
                                study.times().ofTick(lost.toTick()),
                                lost.taken().id())))
                .toList();
    }

    /** Whether a pull or a finding was compared with the limit of {@code hookup} though nobody had said that it was on. */
    private boolean isRestedOn(Hookup hookup) {
        Stream<Entry.Against> used = Stream.of(
                        pulls.stream().map(Entry.Pull::against),
                        overloads.stream().map(Entry.Overload::against),
                        shocks.stream().map(Entry.Shock::against),
                        jolts.stream().map(Entry.Jolt::against),
                        drops.stream().map(Entry.Drop::against))
                .flatMap(each -> each);
        return used.anyMatch(against -> against.assumed() && against.hookup().equals(hookup.id()));
    }

    private Report.Trust trust() throws RecordingException {
        long gaps = 0;
        double gapSeconds = 0;
        long endStops = 0;
        long lostFrames = 0;
        Map<String, Long> rejected = new TreeMap<>();
        Map<String, Long> lostByBoot = new HashMap<>();
        for (Study study : studies) {
            TrustCount trust = study.trust();
            gaps += trust.gaps();
            gapSeconds += study.member().outing().start().instrument().rate().seconds(trust.missingSamples());
            endStops += trust.endStopSamples();
            lostFrames += trust.tally().lostFrames();
            trust.tally().rejected().forEach((kind, n) -> rejected.merge(kind, n, Long::sum));
            // counted since the boot: the outings of one boot must not add up
            String boot = study.member().outing().start().instrument().id() + "/"
                    + study.member().outing().start().instrument().boot();
            lostByBoot.merge(boot, trust.lostByInstrument(), Math::max);
        }
        long lost = lostByBoot.values().stream().mapToLong(Long::longValue).sum();
        return new Report.Trust(
                gaps,
                gapSeconds,
                endStops,
                rejected,
                lostFrames,
                lost,
                chain.intact(),
                chain.lastLink(),
                calibratedAt(),
                LiveSpeech.ofAll(studies.stream().map(Study::live).toList()),
                studies.stream()
                        .mapToLong(study -> study.trust().tally().heldFrames())
                        .sum(),
                studies.stream()
                        .mapToLong(study -> study.trust().tally().repeatedFrames())
                        .sum(),
                zero(),
                thinned());
    }

    private List<Report.Thinned> thinned() {
        return studies.stream()
                .filter(study -> study.member().outing().thinned())
                .map(study -> new Report.Thinned(
                        study.member().file().toString(),
                        study.member().outing().index() + 1,
                        study.ordinal(),
                        study.member().outing().samples()))
                .toList();
    }

    private Report.Zero zero() {
        return new Report.Zero(
                studies.size(),
                studies.stream().filter(study -> !study.trust().isZeroProven()).count(),
                studies.stream().mapToLong(study -> study.trust().zeroMoves()).sum(),
                studies.stream()
                        .mapToDouble(study -> study.trust().greatestZeroNewtons())
                        .max()
                        .orElse(0));
    }

    /** The oldest of those used; empty when one of them is not dated. */
    private Optional<Instant> calibratedAt() {
        List<Optional<Instant>> all = studies.stream()
                .map(study -> question.calibrationOf(study.member().outing()).calibratedAt())
                .toList();
        return all.stream().anyMatch(Optional::isEmpty)
                ? Optional.empty()
                : all.stream().flatMap(Optional::stream).min(Comparator.naturalOrder());
    }

    private List<String> whatIf() {
        Set<String> all = new LinkedHashSet<>();
        studies.forEach(study -> all.addAll(study.differences()));
        return List.copyOf(all);
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>(history.notes());
        long undated = studies.stream()
                .filter(study -> study.member().outing().clockFixes().isEmpty())
                .count();
        if (undated > 0) {
            notes.add(
                    "For " + undated + " of " + studies.size() + " outings no clock was known: their times are unknown"
                            + (question.isWhole() ? "." : ", and they are left out of the time asked for."));
        }
        if (!question.isWhole()) {
            notes.add(
                    "Only what lies, wholly or in part, in the time from "
                            + question.from().map(Object::toString).orElse("the beginning") + " to "
                            + question.to().map(Object::toString).orElse("the end")
                            + " is listed and metered, each pull with its whole length; gaps and losses are those of the whole outings.");
        }
        for (Study study : studies) {
            study.damages()
                    .forEach(damage ->
                            notes.add(HistoryNotes.damaged(study.member().file(), damage.summary())));
        }
        List<String> gone = thinned().stream()
                .map(one -> HistoryNotes.outing(Path.of(one.file()), one.outing() - 1))
                .toList();
        HistoryNotes.thinned(gone, studies.size()).ifPresent(notes::add);
        long cut = studies.stream()
                .filter(study -> !study.member().outing().ended())
                .count();
        HistoryNotes.powerCuts(cut, studies.size()).ifPresent(notes::add);
        return notes;
    }
}
