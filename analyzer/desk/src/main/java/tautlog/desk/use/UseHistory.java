package tautlog.desk.use;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.Copies;
import tautlog.desk.analysis.GivenRecordings;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.HistoryNotes;
import tautlog.desk.analysis.Refusals;
import tautlog.desk.disk.FileState;
import tautlog.desk.progress.Kept;
import tautlog.desk.progress.WhenStopped;
import tautlog.desk.report.LeftOut;
import tautlog.recording.LostOuting;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
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
    private final UseCache cache;
    private final Map<Place, String> rigKeys = new HashMap<>();
    private final Workers workers;
    private final StoredRigs rigs = new StoredRigs();
    /** What became of outings read while the head of their file was, by file and place in it. */
    private final Map<Place, Workers.Result<OutingUse>> ahead = new ConcurrentHashMap<>();

    private final Set<Copies.Identity> begun = ConcurrentHashMap.newKeySet();
    private final List<String> notes = new ArrayList<>();
    private final List<LeftOut.OfRecording> recordingsLeftOut = new ArrayList<>();
    private final List<LeftOut.OfOuting> outingsLeftOut = new ArrayList<>();
    private final List<OutingUse> outings = new ArrayList<>();

    private record Place(Path file, int outing) {}

    private static Place place(Windows.Member member) {
        return new Place(member.file(), member.index());
    }

    private UseHistory(UseSettings settings) {
        this.settings = settings;
        cache = UseCache.in(settings.cacheFolder(), settings.program());
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
        settings.progress().stopped(cache.close() ? Kept.READ_SO_FAR : Kept.NOTHING);
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
        cache.flush();
        noteOutings();
    }

    private List<Windows.Member> once(List<Path> files) throws RecordingException {
        List<Workers.Result<FileHead>> heads =
                workers.each(new Workers.Counted<>("files", this::bytesToRead), files, this::head);
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

    /** 0 as well where it cannot be told: reading it fails soon. */
    private long bytesToRead(Path file) {
        try {
            FileState state = FileState.of(file);
            return cache.hasHead(file, state) ? 0 : state.bytes() + state.logBytes();
        } catch (IOException e) {
            return 0;
        }
    }

    private long samplesToRead(Windows.Member member) {
        boolean known = (member.from().isEmpty() && ahead.containsKey(place(member))) || cache.hasUse(asked(member));
        return known ? 0 : member.samples();
    }

    private FileHead head(Path file) throws RecordingException {
        try {
            Instant now = settings.now().get();
            FileState state = FileState.of(file);
            Optional<FileHead> known = cache.head(file, state);
            if (known.isPresent()) {
                return known.get();
            }
            try (Recording recording = Recording.open(file)) {
                FileHead head = recording.inOneView(() -> headAndUse(recording));
                cache.keep(file, state, now, head);
                return head;
            }
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw new RecordingException(file + ": its size and time cannot be told: " + e.getMessage(), e);
        }
    }

    /** A recorder may write meanwhile: so in one view. */
    private FileHead headAndUse(Recording recording) throws RecordingException {
        String winch = recording.winch();
        String id = recording.id();
        List<OutingHead> heads = new ArrayList<>();
        Recording.Contents contents = recording.contents();
        for (Outing outing : contents.outings()) {
            Copies.Identity identity = Copies.Identity.of(id, outing);
            boolean isNew = outing.samples() > 0 && begun.add(identity);
            String fingerprint = isNew
                    ? useAhead(new History.Member(recording.file(), recording, winch, id, outing))
                    : recording.fingerprint(outing);
            heads.add(OutingHead.of(identity, fingerprint, outing));
        }
        return new FileHead(winch, id, heads, contents.lost());
    }

    /**
     * Of copies only one is read ahead; where it is not the one that counts, that one is read later.
     *
     * @return the fingerprint of the outing
     */
    private String useAhead(History.Member member) throws RecordingException {
        Place place = new Place(member.file(), member.outing().index());
        UseCache.Asked asked = asked(member.recordingId(), place.outing(), Optional.empty());
        Optional<ReadUse> kept = cache.use(asked);
        if (kept.isPresent()) {
            String fingerprint = member.recording().fingerprint(member.outing());
            Optional<OutingUse> known = kept.get().of(fingerprint, place.file());
            if (known.isPresent()) {
                ahead.put(place, new Workers.Result<>(known, Optional.empty()));
                return fingerprint;
            }
        }
        Workers.Result<ReadUse> read = Workers.result(whole -> pass(whole, Optional.empty()), member);
        ahead.put(place, new Workers.Result<>(read.value().map(ReadUse::use), read.refusal()));
        if (read.value().isEmpty()) {
            return member.recording().fingerprint(member.outing());
        }
        cache.keep(asked, read.value().get());
        return read.value().get().fingerprint();
    }

    private UseCache.Asked asked(Windows.Member member) {
        return asked(member.recordingId(), member.index(), member.from());
    }

    private UseCache.Asked asked(String recordingId, int outing, Optional<Instant> from) {
        return new UseCache.Asked(recordingId, outing, from, rig());
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
            outingsLeftOut.add(new LeftOut.OfOuting(file.toString(), lost.index() + 1, lost.reason(), lost.samples()));
        }
    }

    private void use(List<Windows.Member> members) throws RecordingException {
        List<Workers.Result<OutingUse>> uses =
                workers.each(new Workers.Counted<>("outings", this::samplesToRead), members, this::use);
        List<RecordingException> failures = new ArrayList<>();
        for (int i = 0; i < members.size(); i++) {
            Windows.Member member = members.get(i);
            rigKeys.put(place(member), member.head().rigKey());
            uses.get(i).value().ifPresent(outings::add);
            uses.get(i).refusal().ifPresent(e -> {
                failures.add(e);
                outingsLeftOut.add(Refusals.outing(member.file(), member.index(), member.samples(), e));
            });
        }
        if (outings.isEmpty() && !failures.isEmpty()) {
            throw failures.get(0);
        }
    }

    private OutingUse use(Windows.Member member) throws RecordingException {
        Workers.Result<OutingUse> whole = ahead.get(place(member));
        if (whole != null && (member.from().isEmpty() || whole.refusal().isPresent())) {
            return whole.orThrow();
        }
        UseCache.Asked asked = asked(member);
        Optional<OutingUse> known =
                cache.use(asked).flatMap(kept -> kept.of(member.head().fingerprint(), member.file()));
        if (known.isPresent()) {
            return known.get();
        }
        ReadUse read = read(member);
        cache.keep(asked, read);
        return read.use();
    }

    /** The text of the one in place of those stored; empty when there is none. */
    private String rig() {
        return settings.rig().map(UseSettings.OtherRig::toml).orElse("");
    }

    /** Since its head was read a recorder may have gone on with it. */
    private ReadUse read(Windows.Member member) throws RecordingException {
        try (Recording recording = Recording.open(member.file())) {
            return recording.inOneView(() -> {
                Optional<Outing> outing = outing(recording, member.index());
                if (outing.isEmpty()) {
                    throw new RecordingException(
                            member.file() + ": was changed by another program while it was read. Try again.");
                }
                return pass(
                        new History.Member(
                                member.file(), recording, member.winch(), member.recordingId(), outing.get()),
                        member.from());
            });
        }
    }

    private static Optional<Outing> outing(Recording recording, int index) throws RecordingException {
        return recording.outings().stream().filter(one -> one.index() == index).findFirst();
    }

    private ReadUse pass(History.Member member, Optional<Instant> from) throws RecordingException {
        return UsePass.of(member, rigs, settings.rig().map(UseSettings.OtherRig::rig), from);
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
            rig(place).ifPresent(rig -> byWinch.put(place.winch(), rig));
        }
        return byWinch;
    }

    private Optional<Rig> rig(OutingPlace place) throws RecordingException {
        if (settings.rig().isPresent()) {
            return settings.rig().map(UseSettings.OtherRig::rig);
        }
        Path file = Path.of(place.file());
        Optional<String> known = Optional.ofNullable(rigKeys.get(new Place(file, place.outing())))
                .flatMap(cache::rig);
        Optional<String> toml = known.isPresent() ? known : storedRig(file, place.outing());
        try {
            return toml.isEmpty() ? Optional.empty() : Optional.of(rigs.of(file, toml.get()));
        } catch (ConfigException e) {
            return Optional.empty(); // read by another version, whose meters are remembered
        }
    }

    private Optional<String> storedRig(Path file, int index) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            Optional<String> toml =
                    outing(recording, index).map(found -> found.start().rigToml());
            toml.ifPresent(cache::keepRig);
            cache.flush();
            return toml;
        }
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
