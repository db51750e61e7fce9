package tautlog.desk.use;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import tautlog.desk.disk.FileState;
import tautlog.desk.progress.Kept;

/**
 * Remembers what recordings told, so that a second run reads only what is new. All of it follows from the recordings: it may be
 * deleted at any time, and what cannot be remembered costs time only.
 */
final class UseCache {
    /** Raise it when a pass over the same outing gives something else than before. */
    static final int RULES = 9;

    private final CacheFile lines;
    private final String program;

    private UseCache(CacheFile lines, String program) {
        this.lines = lines;
        this.program = program;
    }

    /**
     * Reads what is remembered.
     *
     * @param folder where; empty to remember nothing
     * @param program name and version: another version may find something else
     */
    static UseCache in(Optional<Path> folder, String program) {
        return new UseCache(folder.map(CacheFile::read).orElseGet(CacheFile::none), program + "/" + RULES);
    }

    /** A file's head, as long as the file lies there unchanged. */
    private record KeptHead(FileState state, FileHead head) {}

    /** Empty when the file was not read before, or may have changed since. */
    Optional<FileHead> head(Path file, FileState state) {
        return lines.value(headKey(file), KeptHead.class)
                .filter(kept -> kept.state().equals(state))
                .map(KeptHead::head);
    }

    private record KeptState(FileState state) {}

    /** Whether {@link #head} would tell it, in less time. */
    boolean hasHead(Path file, FileState state) {
        return lines.value(headKey(file), KeptState.class)
                .filter(kept -> kept.state().equals(state))
                .isPresent();
    }

    /**
     * @param state of the file before it was read; forgotten while it is not settled
     * @param now not after {@code state} was looked at
     */
    void keep(Path file, FileState state, Instant now, FileHead head) {
        if (state.isSettled(now)) {
            lines.put(headKey(file), new KeptHead(state, head));
        }
    }

    /** An outing, the part of it that counts, and the text of the rig in place of the stored one, empty for the stored one. */
    record Asked(String recordingId, int index, Optional<Instant> from, String rig) {}

    /** What was remembered of it, read from rows that may have changed since. */
    Optional<ReadUse> use(Asked asked) {
        return lines.value(useKey(asked), ReadUse.class);
    }

    /** Whether {@link #use} tells it, unless its rows changed. */
    boolean hasUse(Asked asked) {
        return lines.has(useKey(asked));
    }

    void keep(Asked asked, ReadUse use) {
        lines.put(useKey(asked), use);
    }

    private record KeptRig(String toml) {}

    /** The text of a stored rig, by {@link OutingHead#rigKey}. */
    Optional<String> rig(String rigKey) {
        return lines.value(rigKey, KeptRig.class).map(KeptRig::toml).filter(toml -> rigKey.equals(rigKey(toml)));
    }

    void keepRig(String toml) {
        lines.put(rigKey(toml), new KeptRig(toml));
    }

    static String rigKey(String toml) {
        return CacheFile.key("rig", toml);
    }

    /** Writes what is new. */
    void flush() {
        lines.append();
    }

    /** Writes what is new, for the last time; tells whether it is remembered. */
    Kept close() {
        return lines.close();
    }

    private String headKey(Path file) {
        return CacheFile.key("head", program, file.toAbsolutePath().normalize().toString());
    }

    private String useKey(Asked asked) {
        return CacheFile.key(
                "use",
                program,
                asked.recordingId(),
                String.valueOf(asked.index()),
                asked.from().map(Instant::toString).orElse(""),
                asked.rig());
    }
}
