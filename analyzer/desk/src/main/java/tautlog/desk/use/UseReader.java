package tautlog.desk.use;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.Copies;
import tautlog.desk.analysis.History;
import tautlog.desk.disk.FileState;
import tautlog.desk.progress.Kept;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.rig.Rig;

/**
 * Reads what files hold and what their outings were used for, or remembers it. Safe for threads.
 *
 * <pre>
 *   head:  UseCache, else the file ──▶ FileHead
 *                         └── each outing not begun elsewhere: UsePass ──▶ kept for use
 *   use:   what head kept, else UseCache, else UsePass over the file again
 * </pre>
 */
final class UseReader {
    private final UseSettings settings;
    private final UseCache cache;
    private final StoredRigs rigs = new StoredRigs();
    /** What became of outings read while the head of their file was, by file and place in it. */
    private final Map<Place, Workers.Result<OutingUse>> ahead = new ConcurrentHashMap<>();

    private final Set<Copies.Identity> begun = ConcurrentHashMap.newKeySet();

    private record Place(Path file, int outing) {}

    UseReader(UseSettings settings) {
        this.settings = settings;
        cache = UseCache.in(settings.cacheFolder(), settings.program());
    }

    /** 0 when its head is remembered, and where it cannot be told: reading it fails soon. */
    long bytesToRead(Path file) {
        try {
            FileState state = FileState.of(file);
            return cache.hasHead(file, state) ? 0 : state.bytes() + state.logBytes();
        } catch (IOException e) {
            return 0;
        }
    }

    /** 0 when it is remembered. */
    long samplesToRead(Windows.Member member) {
        boolean known = (member.from().isEmpty() && ahead.containsKey(new Place(member.file(), member.index())))
                || cache.hasUse(asked(member));
        return known ? 0 : member.samples();
    }

    /** What a file tells of itself; what its outings were used for is read with it, where it is not remembered. */
    FileHead head(Path file) throws RecordingException {
        try {
            Instant now = settings.now().get();
            FileState state = FileState.of(file);
            Optional<FileHead> known = cache.head(file, state);
            if (known.isPresent()) {
                return known.get();
            }
            try (Recording recording = Recording.openToReadAll(file)) {
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

    /** What an outing, or the part of it that counts, was used for. */
    OutingUse use(Windows.Member member) throws RecordingException {
        Workers.Result<OutingUse> whole = ahead.get(new Place(member.file(), member.index()));
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
        try (Recording recording = Recording.openToReadAll(member.file())) {
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

    /**
     * The rig of an outing; empty when this program cannot read it.
     *
     * @param rigKey of the outing's head
     * @throws RecordingException if it is not remembered and the recording cannot be read any more
     */
    Optional<Rig> rig(OutingPlace place, String rigKey) throws RecordingException {
        if (settings.rig().isPresent()) {
            return settings.rig().map(UseSettings.OtherRig::rig);
        }
        Path file = Path.of(place.file());
        Optional<String> known = cache.rig(rigKey);
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

    /** Writes what is to be remembered. */
    void flush() {
        cache.flush();
    }

    /** The same, for the last time; tells whether it is remembered. */
    Kept close() {
        return cache.close();
    }
}
