package tautlog.desk.use;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Supplier;
import tautlog.desk.progress.Progress;
import tautlog.rig.Rig;

/**
 * How a history of use is made.
 *
 * @param cacheFolder where what was read is remembered; empty to remember nothing
 * @param program name and version of the program
 * @param rig in place of those stored
 * @param threads 1 or more; the result does not depend on it
 * @param progress is told how far it is
 * @param now tells the time of the computer's clock
 */
public record UseSettings(
        Optional<Path> cacheFolder,
        String program,
        Optional<OtherRig> rig,
        int threads,
        Progress progress,
        Supplier<Instant> now) {
    /** A rig and its text. */
    public record OtherRig(Rig rig, String toml) {}

    /** Those of a computer with as many threads as it has cores. */
    public static UseSettings of(Optional<Path> cacheFolder, String program, Progress progress) {
        return new UseSettings(
                cacheFolder,
                program,
                Optional.empty(),
                Runtime.getRuntime().availableProcessors(),
                progress,
                Instant::now);
    }
}
