package tautlog.desk.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tautlog.desk.page.Ink;
import tautlog.desk.use.UseSettings;

/** Where a command over many recordings remembers what it read, and how it tells how far it is. */
final class UseOptions {
    @Option(
            names = "--cache",
            paramLabel = "DIR",
            description =
                    "Remember what was read there instead of in the user's cache folder; may be deleted at any time.")
    private @Nullable Path cache;

    @Option(names = "--no-cache", description = "Read everything anew and remember nothing.")
    private boolean noCache;

    /** @param ink whether somebody looks on at a terminal */
    UseSettings settings(Ink ink, PrintWriter err) throws UsageException {
        if (noCache && cache != null) {
            throw new UsageException("--no-cache and --cache " + cache + ": only one of them can hold.");
        }
        return UseSettings.of(
                noCache ? Optional.empty() : Optional.of(cache == null ? ofUser() : cache),
                Version.text(),
                ProgressLine.of(ink, err));
    }

    /** XDG Base Directory Specification 0.8. */
    private static Path ofUser() {
        String folder = System.getenv("XDG_CACHE_HOME");
        Path base = folder != null && Path.of(folder).isAbsolute()
                ? Path.of(folder)
                : Path.of(System.getProperty("user.home"), ".cache");
        return base.resolve("tautlog");
    }
}
