package tautlog.desk.use;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.desk.analysis.Copies;
import tautlog.desk.analysis.GivenRecordings;
import tautlog.desk.analysis.HistoryNotes;
import tautlog.desk.analysis.Refusals;
import tautlog.desk.progress.WhenStopped;
import tautlog.desk.report.LeftOut;
import tautlog.recording.LostOuting;
import tautlog.recording.RecordingException;
import tautlog.rig.Rig;

/**
 * What the machines did, outing by outing, over any number of recordings.
 *
 * <ol>
 *   <li>the head of each file, or the cache: which outings it holds; while a file is open, {@link UsePass} over them
 *   <li>{@link Copies}: each outing once
 *   <li>{@link Windows}: no time of a winch twice
 *   <li>of each outing what was read then, or the cache, or {@link UsePass} again where only a part of it counts
 * </ol>
 */
public final class UseHistory {
    private final UseSettings settings;
    private final UseReader reader;
    private final Workers workers;
    private final Map<OutingPlace, String> rigKeys = new HashMap<>();
    private final List<String> notes = new ArrayList<>();
    private final List<LeftOut.OfRecording> recordingsLeftOut = new ArrayList<>();
    private final List<LeftOut.OfOuting> outingsLeftOut = new ArrayList<>();
    private final List<OutingUse> outings = new ArrayList<>();

    private UseHistory(UseSettings settings) {
        this.settings = settings;
        reader = new UseReader(settings);
        workers = new Workers(settings.threads(), settings.progress());
    }

    /**
     * Reads recordings; what cannot be read is left out and named.
     *
     * @param filesAndFolders one or more
     * @throws RecordingException if one is not there, or none can be read
     */
    public static UseHistory of(List<Path> filesAndFolders, UseSettings settings) throws IOException {
        UseHistory history = new UseHistory(settings);
        WhenStopped stopped = WhenStopped.does(history::stop);
        try {
            history.read(GivenRecordings.in(filesAndFolders));
        } finally {
            stopped.workIsOver();
        }
        return history;
    }

    /** What was read until now is remembered; threads that still read may go on, for nothing. */
    private void stop() {
        settings.progress().stopped(reader.close());
    }

    private void read(List<Path> files) throws RecordingException {
        List<Windows.Member> once = once(files);
        Windows windows = Windows.of(once);
        notes.addAll(windows.notes());
        HistoryNotes.winches(windows.members().stream()
                        .map(Windows.Member::winch)
                        .distinct()
                        .toList())
                .ifPresent(notes::add);
        use(windows.members());
        reader.flush();
        noteOutings();
    }

    private List<Windows.Member> once(List<Path> files) throws RecordingException {
        List<Workers.Result<FileHead>> heads =
                workers.each(new Workers.Counted<>("files", reader::bytesToRead), files, reader::head);
        Copies<Windows.Member> once = new Copies<>(notes::add);
        List<RecordingException> unusable = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            Path file = files.get(i);
            heads.get(i).value().ifPresent(head -> add(once, file, head));
            heads.get(i).refusal().ifPresent(e -> {
                unusable.add(e);
                recordingsLeftOut.add(Refusals.recording(file, e));
            });
        }
        if (unusable.size() == files.size()) {
            throw Refusals.all(unusable);
        }
        return once.kept();
    }

    private static Windows.Member member(Path file, FileHead head, OutingHead outing) {
        return new Windows.Member(file, head.winch(), head.recordingId(), outing, Optional.empty());
    }

    private void add(Copies<Windows.Member> once, Path file, FileHead head) {
        if (head.outings().isEmpty()) {
            notes.add(HistoryNotes.noOuting(file));
        }
        for (OutingHead outing : head.outings()) {
            int index = outing.identity().index();
            if (outing.samples() > 0) {
                once.add(member(file, head, outing));
            } else if (head.lost().stream().noneMatch(lost -> lost.index() == index)) {
                notes.add(HistoryNotes.noReadings(file, index));
            }
        }
        for (LostOuting lost : head.lost()) {
            outingsLeftOut.add(Refusals.lost(file, lost));
        }
    }

    private void use(List<Windows.Member> members) throws RecordingException {
        List<Workers.Result<OutingUse>> uses =
                workers.each(new Workers.Counted<>("outings", reader::samplesToRead), members, reader::use);
        List<RecordingException> failures = new ArrayList<>();
        for (int i = 0; i < members.size(); i++) {
            Windows.Member member = members.get(i);
            uses.get(i).value().ifPresent(use -> {
                rigKeys.put(use.at(), member.head().rigKey());
                outings.add(use);
            });
            uses.get(i).refusal().ifPresent(e -> {
                failures.add(e);
                outingsLeftOut.add(Refusals.outing(member.file(), member.index(), member.samples(), e));
            });
        }
        if (outings.isEmpty() && !failures.isEmpty()) {
            throw failures.get(0);
        }
    }

    private void noteOutings() {
        outings.forEach(use -> use.damages()
                .forEach(what -> notes.add(HistoryNotes.damaged(Path.of(use.at().file()), what))));
        List<String> thinned = outings.stream()
                .filter(use -> use.nature().thinned())
                .map(use ->
                        HistoryNotes.outing(Path.of(use.at().file()), use.at().outing()))
                .toList();
        HistoryNotes.thinned(thinned, outings.size()).ifPresent(notes::add);
        long cut = outings.stream().filter(use -> !use.nature().ended()).count();
        HistoryNotes.powerCuts(cut, outings.size()).ifPresent(notes::add);
    }

    /**
     * The latest rig of each winch, by the winch's name; one that this program cannot read is left out. Opens a recording where its rig
     * is not remembered.
     *
     * @throws RecordingException if that cannot be read any more
     */
    public Map<String, Rig> latestRigs() throws RecordingException {
        Map<String, OutingPlace> latest = new LinkedHashMap<>();
        outings.forEach(use -> latest.put(use.at().winch(), use.at()));
        Map<String, Rig> byWinch = new LinkedHashMap<>();
        for (OutingPlace place : latest.values()) {
            reader.rig(place, requireNonNull(rigKeys.get(place))).ifPresent(rig -> byWinch.put(place.winch(), rig));
        }
        return byWinch;
    }

    /** Each once, in the order of their starts; those without a clock last. */
    public List<OutingUse> outings() {
        return List.copyOf(outings);
    }

    /** What could not be read and is in no figure. */
    public LeftOut leftOut() {
        List<LeftOut.OfBlock> blocks = outings.stream()
                .flatMap(use -> use.damages().stream()
                        .map(what -> new LeftOut.OfBlock(use.at().file(), what)))
                .toList();
        return new LeftOut(recordingsLeftOut, outingsLeftOut).with(blocks);
    }

    /** What a reader must know of how outings were put together, one sentence each. */
    public List<String> notes() {
        return List.copyOf(notes);
    }
}
