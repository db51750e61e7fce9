package tautlog.logger.recorder;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingException.Scope;
import tautlog.recording.RecordingName;
import tautlog.recording.RecordingWriter;

/**
 * Recordings in a folder: an outing goes to the file of the UTC day on which it began, behind those that are there.
 *
 * <p>A file that cannot be gone on with for a reason of its own (damaged, of another program or winch, newer, locked) is left as it
 * is, and the day goes on in its next name, {@code _2} and so on, behind what is there.
 *
 * <p>A recording begun while no clock was known gets its day's name when it is closed, if a clock was known by then.
 */
public final class DayFiles implements RecordingStore {
    private static final Logger LOG = LoggerFactory.getLogger(DayFiles.class);

    private final RecordingFiles files;
    private @Nullable RecordingWriter writer;
    /** The name that the day's recording has first; {@link #file} may be one behind it. */
    private Optional<Path> day = Optional.empty();

    private Optional<Path> file = Optional.empty();
    /** What was said already of files that were left: a disk that refuses has the same asked again each second. */
    private final Set<String> left = new HashSet<>();

    public DayFiles(RecordingFiles files) {
        this.files = files;
    }

    @Override
    public OutingWriter begin(OutingStart start, Optional<Long> utcMicros) throws RecordingException {
        Path wanted = utcMicros.map(files::dated).orElseGet(this::undated);
        if (!day.equals(Optional.of(wanted))) {
            close();
            day = Optional.of(wanted);
        }
        for (int n = 1; ; n++) {
            Path next = RecordingName.nth(wanted, n);
            boolean isThere = writer != null || Files.exists(next);
            try {
                return open(next).begin(start);
            } catch (RecordingException refused) {
                if (!isThere || refused.scope() != Scope.THIS_FILE) {
                    throw refused;
                }
                leave(refused);
            }
        }
    }

    private RecordingWriter open(Path next) throws RecordingException {
        RecordingWriter open = writer;
        if (open == null) {
            open = RecordingWriter.open(next, files.winch());
            writer = open;
            file = Optional.of(next);
        }
        return open;
    }

    private void leave(RecordingException refused) {
        String why = String.valueOf(refused.getMessage());
        if (left.add(why)) {
            LOG.error(
                    "{}\n  It is left as it is, and the day goes on in its next name. Keep it, with the -wal file"
                            + " beside it if there is one: what it holds may be saved.",
                    why);
        }
        RecordingWriter open = writer;
        writer = null;
        try {
            if (open != null) {
                open.close();
            }
        } catch (RecordingException damaged) {
            LOG.debug("closing what cannot be gone on with: {}", damaged.getMessage());
        }
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
