package tautlog.desk.season;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Where indexes are kept: beside the recordings, else in the user's cache folder, else nowhere. What stands there may be deleted at any
 * time.
 */
public final class IndexFolder {
    /** Not ending like a recording, which a folder of that name would be taken for. */
    static final String NAME = "tautlog-index";

    private IndexFolder() {}

    /** The first of the two that can be written; empty when none can: indexes then live as long as the program. */
    public static Optional<Path> of(Path recordings, Path userCache) {
        Path beside = recordings.resolve(NAME);
        Path cached = userCache
                .resolve("tautlog")
                .resolve(Fingerprint.of(recordings.toAbsolutePath().normalize().toString())
                        .substring(0, 16));
        return isUsable(beside) ? Optional.of(beside) : isUsable(cached) ? Optional.of(cached) : Optional.empty();
    }

    private static boolean isUsable(Path folder) {
        try {
            Files.createDirectories(folder);
            Path probe = Files.createTempFile(folder, "probe", ".part");
            Files.delete(probe);
            return true;
        } catch (IOException | SecurityException e) {
            return false;
        }
    }
}
