package tautlog.logger.recorder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;

/**
 * The names of one winch's recordings: {@code <winch>_<UTC day the outing began>.tautlog}, {@code <winch>_undated-N.tautlog}
 * while no clock is known. The day in a name is that of the recording's first outing with a known time, once it is closed.
 */
public final class RecordingFiles {
    private static final Logger LOG = LoggerFactory.getLogger(RecordingFiles.class);
    /** Chosen: five times as long as frames wait for their HELLO. */
    private static final long HELD_MICROS = 10_000_000;

    private final Path folder;
    private final String winch;
    private final String prefix;
    private final Pattern ownName;
    private final RecordingDoor door = new RecordingDoor();

    public RecordingFiles(Path folder, String winch) {
        this.folder = folder;
        this.winch = winch;
        String example =
                RecordingName.dated(folder, winch, Instant.EPOCH).getFileName().toString();
        prefix = example.substring(0, example.length() - ("1970-01-01" + RecordingName.ENDING).length());
        ownName = Pattern.compile(Pattern.quote(prefix) + "(undated-\\d+|\\d{4}-\\d\\d-\\d\\d)(?:_\\d+)?"
                + Pattern.quote(RecordingName.ENDING));
    }

    public Path folder() {
        return folder;
    }

    public String winch() {
        return winch;
    }

    /** Where readers of this program wait while a recording is closed. */
    public RecordingDoor door() {
        return door;
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

    /**
     * Whether an outing may begin in this recording at any moment, if it is not going on in it already: it is of the day of {@code
     * now} by the computer's clock or of a later one, or of no known day.
     */
    public boolean mayBeBegunIn(Path file, Instant now) {
        Matcher name = ownName.matcher(file.getFileName().toString());
        String today = LocalDate.ofInstant(now, ZoneOffset.UTC).toString();
        return name.matches() && (isUndated(file) || name.group(1).compareTo(today) >= 0);
    }

    /** A name of that day that no file has yet: {@code _2} and so on when there is one. */
    Path free(long utcMicros) {
        return RecordingName.datedAndFree(folder, winch, instant(utcMicros));
    }

    /**
     * Gives a closed recording the name of the day on which its first outing with a known time began, when it has another: it was
     * begun while no clock was known, or one that stood wrong.
     *
     * @return its name from now on
     */
    Path named(Path closed) throws RecordingException {
        return named(closed, RecordingTimes.of(closed).began());
    }

    /** As {@link #named(Path)}, when it is known already when its first outing began. */
    Path named(Path closed, Optional<Long> began) throws RecordingException {
        if (RecordingName.hasLog(closed)) {
            return closed; // somebody reads it: its newest rows stand beside it and would be left behind
        }
        if (began.isEmpty() || isNamedBy(closed, began.get())) {
            return closed;
        }
        Path name = free(began.get());
        try {
            Path moved = Files.move(closed, name);
            LOG.info("recording {} is named {} from now on: that day it began", closed.getFileName(), name);
            return moved;
        } catch (IOException e) {
            throw new RecordingException(closed + ": cannot be renamed to " + name + ": " + e.getMessage(), e);
        }
    }

    /** Names that are not of our making stay. Held frames are older than the HELLO whose day named the file. */
    private boolean isNamedBy(Path file, long beganMicros) {
        Matcher name = ownName.matcher(file.getFileName().toString());
        return !name.matches()
                || name.group(1).equals(day(beganMicros))
                || name.group(1).equals(day(beganMicros + HELD_MICROS));
    }

    private static String day(long utcMicros) {
        return LocalDate.ofInstant(instant(utcMicros), ZoneOffset.UTC).toString();
    }

    /** All recordings of this winch that are there, the one written last first. */
    public List<Path> there() throws RecordingException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(this::isOurs)
                    .sorted((a, b) -> Long.compare(modified(b), modified(a)))
                    .toList();
        } catch (IOException e) {
            throw new RecordingException(folder + ": cannot be listed: " + e.getMessage(), e);
        }
    }

    /** All recordings of this winch that are there: by their days, then those of unknown day, the one written first before others. */
    List<Path> oldestFirst() throws RecordingException {
        return there().stream()
                .sorted(Comparator.comparing(this::isUndated)
                        .thenComparing(file -> isUndated(file) ? "" : file.toString())
                        .thenComparingLong(RecordingFiles::modified))
                .toList();
    }

    /** Whether this program gives such names; a copy may have one, too. */
    public boolean isNamedByUs(Path file) {
        return ownName.matcher(file.getFileName().toString()).matches();
    }

    private boolean isOurs(Path file) {
        String name = file.getFileName().toString();
        return name.startsWith(prefix) && name.endsWith(RecordingName.ENDING);
    }

    private static long modified(Path file) {
        return file.toFile().lastModified();
    }
}
