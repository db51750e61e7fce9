package tautlog.recording;

import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;

/**
 * Names recordings: {@code <winch>_<UTC day the outing began>.tautlog}, {@code <winch>_undated-N.tautlog} while no clock is
 * known, {@code _2}, {@code _3} … before the ending when the name is taken by another recording.
 */
public final class RecordingName {
    /** The ending of every recording's name. */
    public static final String ENDING = ".tautlog";

    private static final int LONGEST_WINCH = 64;

    private RecordingName() {}

    /** The file for an outing that began at {@code begin}; it may exist already: the day's recording goes on. */
    public static Path dated(Path folder, String winch, Instant begin) {
        return folder.resolve(stem(winch, begin) + ENDING);
    }

    /** Like {@link #dated}, but a name that is not taken: for a file that cannot be gone on with, or that is renamed. */
    public static Path datedAndFree(Path folder, String winch, Instant begin) {
        Path plain = dated(folder, winch, begin);
        Path free = plain;
        for (int n = 2; isTaken(free); n++) {
            free = nth(plain, n);
        }
        return free;
    }

    /** The {@code n}th name beside {@code plain}: the first is that itself, the others have {@code _2}, {@code _3} … */
    public static Path nth(Path plain, int n) {
        String name = String.valueOf(plain.getFileName());
        String stem = name.substring(0, name.length() - ENDING.length());
        return n == 1 ? plain : plain.resolveSibling(stem + "_" + n + ENDING);
    }

    /** A name that is not taken, for an outing that begins before the day is known. */
    public static Path undated(Path folder, String winch) {
        int n = 1;
        Path file;
        do {
            file = folder.resolve(safe(winch) + "_undated-" + n++ + ENDING);
        } while (isTaken(file));
        return file;
    }

    /** Whether committed rows may still stand in the write-ahead log beside {@code file}, which must not be renamed then. */
    public static boolean hasLog(Path file) {
        return RecordingFile.hasLog(file);
    }

    private static boolean isTaken(Path file) {
        return Files.exists(file) || Files.exists(RecordingFile.log(file));
    }

    private static String stem(String winch, Instant begin) {
        return safe(winch) + "_" + LocalDate.ofInstant(begin, ZoneOffset.UTC);
    }

    /**
     * The winch's name as every file system takes it: lower-case ASCII letters, digits, dots and hyphens inside, at most 64;
     * {@code winch} when nothing is left.
     */
    public static String safe(String winch) {
        String plain = Normalizer.normalize(winch, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9.-]+", "-")
                .replaceAll("^[.-]+|[.-]+$", "");
        String cut = plain.length() > LONGEST_WINCH ? plain.substring(0, LONGEST_WINCH) : plain;
        String name = cut.replaceAll("[.-]+$", "");
        return name.isEmpty() ? "winch" : name;
    }
}
