package tautlog.desk.season;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import tautlog.desk.analysis.History;
import tautlog.desk.disk.FileState;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;

/**
 * Looks into the folder: all of it, or only at the files that changed since. One thread.
 *
 * <p>A recording that was written lately ({@link FileState#isSettled}) is looked at again although it did not change.
 */
final class FolderLook {
    private final Path folder;
    private final ZoneId zone;
    /** Of each recording; empty while it is not settled. */
    private Map<Path, Optional<FileState>> states = Map.of();

    FolderLook(Path folder, ZoneId zone) {
        this.folder = folder;
        this.zone = zone;
    }

    /** The season now; {@code before} itself when nothing changed. */
    KnownSeason look(KnownSeason before) throws IOException {
        Map<Path, Optional<FileState>> now = states(Instant.now());
        List<Path> changed = now.entrySet().stream()
                .filter(entry -> entry.getValue().isEmpty() || !entry.getValue().equals(states.get(entry.getKey())))
                .map(Map.Entry::getKey)
                .toList();
        boolean isSameSet = now.keySet().equals(states.keySet());
        if (isSameSet && changed.isEmpty()) {
            return before;
        }
        states = Map.of(); // until the look succeeds
        KnownSeason season = isSameSet ? refresh(before, changed) : whole();
        states = now;
        return season;
    }

    private Map<Path, Optional<FileState>> states(Instant now) throws IOException {
        Map<Path, Optional<FileState>> found = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(FolderLook::isRecording).toList()) {
                found.put(file, state(file).filter(state -> state.isSettled(now)));
            }
        }
        return found;
    }

    private static boolean isRecording(Path file) {
        return String.valueOf(file.getFileName()).endsWith(RecordingName.ENDING);
    }

    private static Optional<FileState> state(Path file) {
        try {
            return Optional.of(FileState.of(file));
        } catch (IOException e) {
            return Optional.empty(); // renamed or taken away since the folder was listed
        }
    }

    private KnownSeason whole() throws IOException {
        try (History history = History.open(List.of(folder))) {
            List<KnownOuting> outings = new ArrayList<>();
            Map<Path, String> stamps = new HashMap<>();
            for (History.Member member : history.members()) {
                outings.add(KnownOuting.of(member, member.recording().id()));
                stamps.put(member.file(), stamp(member.recording()));
            }
            return new KnownSeason(
                    zone,
                    outings,
                    stamps,
                    history.leftOut(),
                    history.notes().stream()
                            .map(note -> WithoutFolder.text(folder, note))
                            .toList());
        }
    }

    private static String stamp(Recording recording) throws RecordingException {
        return recording.id() + " " + recording.rows() + " "
                + recording.lastSealedLink().orElse("none");
    }

    /** Recordings that grew; a new outing, or one that cannot be read any more, takes a look at all. */
    private KnownSeason refresh(KnownSeason before, List<Path> changed) throws IOException {
        Map<Path, String> stamps = new HashMap<>(before.stamps());
        Map<String, Outing> grown = new HashMap<>();
        for (Path file : changed) {
            try (Recording recording = Recording.open(file)) {
                stamps.put(file, stamp(recording));
                for (Outing outing : recording.outings()) {
                    String id = recording.id() + "." + outing.index();
                    if (outing.samples() > 0 && before.outing(id).isEmpty()) {
                        return whole();
                    }
                    grown.put(id, outing);
                }
            } catch (RecordingException e) {
                return whole();
            }
        }
        List<KnownOuting> outings = before.outings().stream()
                .map(one -> changed.contains(one.file()) && grown.containsKey(one.id())
                        ? one.with(grown.getOrDefault(one.id(), one.outing()))
                        : one)
                .toList();
        return new KnownSeason(zone, outings, stamps, before.leftOut(), before.notes());
    }
}
