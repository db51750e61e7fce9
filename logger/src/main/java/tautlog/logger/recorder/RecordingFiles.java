package tautlog.logger.recorder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;

/**
 * The names of one winch's recordings: {@code <winch>_<UTC day the outing began>.tautlog}, {@code <winch>_undated-N.tautlog}
 * while no clock is known.
 */
public final class RecordingFiles {
    private final Path folder;
    private final String winch;
    private final String prefix;

    public RecordingFiles(Path folder, String winch) {
        this.folder = folder;
        this.winch = winch;
        String example =
                RecordingName.dated(folder, winch, Instant.EPOCH).getFileName().toString();
        prefix = example.substring(0, example.length() - ("1970-01-01" + RecordingName.ENDING).length());
    }

    String winch() {
        return winch;
    }

    /** The file for outings that begin at this moment, there or not. */
    public Path dated(long utcMicros) {
        return RecordingName.dated(folder, winch, instant(utcMicros));
    }

    private static Instant instant(long utcMicros) {
        return Instant.EPOCH.plus(utcMicros, ChronoUnit.MICROS);
    }

    /** A name that no file has yet, for a recording whose day is not known. */
    Path undated() {
        return RecordingName.undated(folder, winch);
    }

    boolean isUndated(Path file) {
        return file.getFileName().toString().startsWith(prefix + "undated-");
    }

    /** A name of that day that no file has yet: {@code _2} and so on when there is one. */
    Path free(long utcMicros) {
        return RecordingName.datedAndFree(folder, winch, instant(utcMicros));
    }

    /**
     * Gives a closed recording of unknown day its day's name, if a clock was known before it ended.
     *
     * @return its name from now on
     */
    Path named(Path closed) throws RecordingException {
        if (!isUndated(closed)) {
            return closed;
        }
        Optional<Long> began = began(closed);
        if (began.isEmpty()) {
            return closed;
        }
        Path name = free(began.get());
        try {
            return Files.move(closed, name);
        } catch (IOException e) {
            throw new RecordingException(closed + ": cannot be renamed to " + name + ": " + e.getMessage(), e);
        }
    }

    private static Optional<Long> began(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            for (Outing outing : recording.outings()) {
                OptionalLong utcMicros = outing.utcMicros(outing.firstTick());
                if (utcMicros.isPresent()) {
                    return Optional.of(utcMicros.getAsLong());
                }
            }
        }
        return Optional.empty();
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
        return name.startsWith(prefix) && name.endsWith(RecordingName.ENDING);
    }

    private static long modified(Path file) {
        return file.toFile().lastModified();
    }
}
