package tautlog.logger.recorder;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
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
        file = files.door().close(() -> {
            open.close();
            return file.isPresent() ? Optional.of(files.named(file.get())) : file;
        });
    }
}
