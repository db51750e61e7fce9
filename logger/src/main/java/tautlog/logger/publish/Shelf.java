package tautlog.logger.publish;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;

/** The recordings of one winch that are not published to their end, by name: that is by day. */
final class Shelf {
    private static final Logger LOG = LoggerFactory.getLogger(Shelf.class);

    private final RecordingFiles files;
    private final Cursors cursors;
    private final Map<String, Followed> open = new HashMap<>();
    private final Map<String, Long> overAtBytes = new HashMap<>();
    private final Set<Path> unknown = new HashSet<>();
    private final Set<Path> unreadable = new HashSet<>();
    private int passedOver;

    Shelf(RecordingFiles files, Cursors cursors) {
        this.files = files;
        this.cursors = cursors;
    }

    /** Looks into the folder: finds what is new, what goes on, what was renamed. */
    void scan() throws RecordingException {
        Map<String, Candidate> best = new TreeMap<>();
        List<Path> there = files.there();
        unknown.retainAll(there);
        unreadable.retainAll(there);
        for (Path file : there) {
            try {
                Candidate found = files.door().read(() -> candidate(file));
                unknown.remove(file);
                best.merge(
                        found.id(), found, (one, other) -> Candidate.BEST_LAST.compare(one, other) > 0 ? one : other);
            } catch (RecordingException refusal) {
                if (unknown.add(file)) {
                    LOG.warn("not published: {}", refusal.getMessage());
                }
            }
        }
        best.values().forEach(this::take);
    }

    /** A file of a recording; a copy beside the original has the same {@code id}. */
    private record Candidate(String id, Path file, long rows, boolean isNamedByUs) {
        /** The one that goes on has the most rows; where they are alike, it does not matter which. */
        static final Comparator<Candidate> BEST_LAST = Comparator.comparingLong(Candidate::rows)
                .thenComparing(Candidate::isNamedByUs)
                .thenComparing(Candidate::file);
    }

    private Candidate candidate(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return new Candidate(recording.id(), file, recording.rows(), files.isNamedByUs(file));
        }
    }

    private void take(Candidate found) {
        Long bytes = overAtBytes.get(found.id());
        if (bytes != null && bytes == bytes(found.file())) {
            return;
        }
        overAtBytes.remove(found.id());
        open.computeIfAbsent(found.id(), id -> new Followed(found.file(), id, cursors))
                .isNow(found.file());
    }

    private static long bytes(Path file) {
        return file.toFile().length()
                + file.resolveSibling(file.getFileName() + "-wal").toFile().length();
    }

    /** Those that may have something to publish, oldest day first. */
    List<Followed> open() {
        TreeMap<String, Followed> byName = new TreeMap<>();
        open.values().forEach(followed -> byName.put(followed.file().toString(), followed));
        return List.copyOf(byName.values());
    }

    /** Lets go of what is published to its end; the next scan takes it up when it goes on. */
    void close(Followed followed) {
        passedOver += followed.passedOver();
        open.remove(followed.id());
        overAtBytes.put(followed.id(), bytes(followed.file()));
        cursors.forget(followed.id());
    }

    /**
     * It is not there under this name any more, or cannot be read: the next scan finds it again.
     *
     * @return whether it is not there any more
     */
    boolean lost(Followed followed, RecordingException refusal) {
        open.remove(followed.id());
        boolean isGone = !Files.exists(followed.file());
        if (!isGone && unreadable.add(followed.file())) {
            LOG.warn("not published for now: {}", refusal.getMessage());
        }
        return isGone;
    }

    /** All that is there of it could be read. */
    void wasRead(Followed followed) {
        unreadable.remove(followed.file());
    }

    /** Files that could not be read when they were last looked at. */
    int unreadable() {
        Set<Path> all = new HashSet<>(unknown);
        all.addAll(unreadable);
        return all.size();
    }

    /** Forgets what was read; cursors stay. */
    void clear() {
        open.clear();
    }

    long waiting() {
        return open.values().stream().mapToLong(Followed::waiting).sum();
    }

    int passedOver() {
        return passedOver
                + open.values().stream().mapToInt(Followed::passedOver).sum();
    }
}
