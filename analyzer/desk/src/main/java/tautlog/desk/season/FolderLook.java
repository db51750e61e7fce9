package tautlog.desk.season;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tautlog.desk.analysis.History;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;

/**
 * Looks into the folder: all of it, or only at the files that changed since. One thread.
 *
 * <p>What a commit writes shows in the file before the commit can be read: not until the disk has it. So a recording whose log was written lately
 * is looked at again although it did not change. A commit goes to the log beside the recording, so that tells.
 */
final class FolderLook {
    /** Chosen: as long as the logger's memory lasts when the disk stalls. */
    private static final Duration SETTLED_AFTER = Duration.ofSeconds(60);

    private static final String UNSETTLED = "";
    private final Path folder;
    private final ZoneId zone;
    private Map<Path, String> states = Map.of();

    FolderLook(Path folder, ZoneId zone) {
        this.folder = folder;
        this.zone = zone;
    }

    /** The season now; {@code before} itself when nothing changed. */
    KnownSeason look(KnownSeason before) throws IOException {
        Instant settled = Instant.now().minus(SETTLED_AFTER);
        Map<Path, String> now = states(settled);
        List<Path> changed = now.entrySet().stream()
                .filter(entry ->
                        entry.getValue().equals(UNSETTLED) || !entry.getValue().equals(states.get(entry.getKey())))
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

    private Map<Path, String> states(Instant settled) throws IOException {
        Map<Path, String> found = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(FolderLook::isRecording).toList()) {
                Path log = file.resolveSibling(file.getFileName() + "-wal");
                boolean isSettled = isSettled(log, settled);
                found.put(file, isSettled ? state(file) + " " + state(log) : UNSETTLED);
            }
        }
        return found;
    }

    private static boolean isRecording(Path file) {
        return String.valueOf(file.getFileName()).endsWith(RecordingName.ENDING);
    }

    private static boolean isSettled(Path log, Instant settled) {
        try {
            return Files.getLastModifiedTime(log).toInstant().isBefore(settled);
        } catch (IOException e) {
            return true; // it is not there
        }
    }

    private static String state(Path file) {
        try {
            BasicFileAttributes of = Files.readAttributes(file, BasicFileAttributes.class);
            return of.size() + "/" + of.lastModifiedTime();
        } catch (IOException e) {
            return "none";
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
