package tautlog.logger.recorder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;

/**
 * Recordings in a folder: an outing goes to the file of the UTC day on which it began, behind those that are there.
 *
 * <p>A recording begun while no clock was known gets its day's name when it is closed, if a clock was known by then.
 */
public final class DayFiles implements RecordingStore {
    private final RecordingFiles files;
    private @Nullable RecordingWriter writer;
    private Optional<Path> file = Optional.empty();

    public DayFiles(RecordingFiles files) {
        this.files = files;
    }

    @Override
    public OutingWriter begin(OutingStart start, Optional<Long> utcMicros) throws RecordingException {
        Path wanted = utcMicros.map(files::dated).orElseGet(this::undated);
        if (!file.equals(Optional.of(wanted))) {
            close();
        }
        RecordingWriter open = writer;
        if (open == null) {
            open = RecordingWriter.open(wanted, files.winch());
            writer = open;
            file = Optional.of(wanted);
        }
        return open.begin(start);
    }

    private Path undated() {
        return file.filter(files::isUndated).orElseGet(files::undated);
    }

    @Override
    public Optional<String> file() {
        return file.map(Path::toString);
    }

    @Override
    public void close() throws RecordingException {
        RecordingWriter open = writer;
        if (open == null) {
            return;
        }
        writer = null;
        open.close();
        file = file.isPresent() ? Optional.of(dated(file.get())) : file;
    }

    private Path dated(Path closed) throws RecordingException {
        if (!files.isUndated(closed)) {
            return closed;
        }
        Optional<Long> began = began(closed);
        if (began.isEmpty()) {
            return closed;
        }
        Path name = files.free(began.get());
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
}
