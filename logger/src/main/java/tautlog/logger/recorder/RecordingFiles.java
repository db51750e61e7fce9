package tautlog.logger.recorder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Stream;
import tautlog.recording.RecordingException;

/**
 * The names of one winch's recordings: {@code <winch>_<UTC day the outing began>.tautlog}, {@code <winch>_undated-N.tautlog}
 * while no clock is known.
 */
public final class RecordingFiles {
    private static final String ENDING = ".tautlog";

    private final Path folder;
    private final String winch;

    public RecordingFiles(Path folder, String winch) {
        this.folder = folder;
        this.winch = winch;
    }

    String winch() {
        return winch;
    }

    /** The file for outings that begin at this moment, there or not. */
    public Path dated(long utcMicros) {
        LocalDate day = LocalDate.ofInstant(Instant.EPOCH.plus(utcMicros, ChronoUnit.MICROS), ZoneOffset.UTC);
        return folder.resolve(winch + "_" + day + ENDING);
    }

    /** A name that no file has yet, for a recording whose day is not known. */
    Path undated() {
        int n = 1;
        while (Files.exists(folder.resolve(undatedName(n)))) {
            n++;
        }
        return folder.resolve(undatedName(n));
    }

    private String undatedName(int n) {
        return winch + "_undated-" + n + ENDING;
    }

    boolean isUndated(Path file) {
        return file.getFileName().toString().startsWith(winch + "_undated-");
    }

    /** A name of that day that no file has yet: {@code _2} and so on when there is one. */
    Path free(long utcMicros) {
        Path wanted = dated(utcMicros);
        String stem = wanted.getFileName().toString().replace(ENDING, "");
        Path free = wanted;
        for (int n = 2; Files.exists(free); n++) {
            free = folder.resolve(stem + "_" + n + ENDING);
        }
        return free;
    }

    /** All recordings of this winch that are there, the one written last first. */
    List<Path> there() throws RecordingException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(this::isOurs)
                    .sorted((a, b) -> Long.compare(modified(b), modified(a)))
                    .toList();
        } catch (IOException e) {
            throw new RecordingException(folder + ": cannot be listed: " + e.getMessage(), e);
        }
    }

    private boolean isOurs(Path file) {
        String name = file.getFileName().toString();
        return name.startsWith(winch + "_") && name.endsWith(ENDING);
    }

    private static long modified(Path file) {
        return file.toFile().lastModified();
    }
}
