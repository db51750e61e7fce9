package tautlog.logger.drive;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import tautlog.logger.drive.DriveState.ReadBack;
import tautlog.logger.drive.DriveState.Tally;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.recorder.DiskReserve.FreeSpace;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.recording.NotedLink;
import tautlog.recording.Recording;
import tautlog.recording.RecordingCopy;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;

/**
 * Brings a drive up to date, once: each recording of the folder that it does not have, in order of their names, which is that of their days;
 * then {@link LastLinks}. What does not fit is left out whole, and the next is tried.
 *
 * <p>The recording that is being written, or may be at any moment, is copied within this computer first: a drive that hangs must not keep its log from being
 * folded in. One thread.
 */
final class DriveVisit {
    /** Chosen: what a name, and a folder that grows, may take beside the file. */
    private static final long BESIDE_BYTES = 64L << 10;

    private static final String SNAPSHOT = "drive-copy" + DriveCopy.UNFINISHED;

    private final RecordingFiles files;
    private final FreeSpace space;
    private final InstantSource clock;

    private final List<String> trouble = new ArrayList<>();
    private final List<String> noRoom = new ArrayList<>();
    private final List<NotedLink> links = new ArrayList<>();
    private ReadBack readBack = ReadBack.NOTHING;
    private int copied;
    private int kept;

    /** @param space left on the disk of the recordings */
    DriveVisit(RecordingFiles files, FreeSpace space, InstantSource clock) {
        this.files = files;
        this.space = space;
        this.clock = clock;
    }

    /**
     * Serves the drive at {@code drive}.
     *
     * @param beingWritten the recording that is being written, if any; asked anew for each
     * @param isThere whether it is still this drive that is mounted there
     */
    Tally serve(Path drive, Supplier<Optional<Path>> beingWritten, BooleanSupplier isThere) {
        try {
            Path folder = folder(drive, isThere);
            DriveCopy copy = new DriveCopy(folder, files.door());
            for (Path recording : recordings()) {
                requireThere(isThere);
                one(recording, () -> mayBeWritten(recording, beingWritten.get()), folder, copy);
            }
            requireThere(isThere);
            new LastLinks(folder).add(links);
            Medium.flush(folder);
            tellRoom();
        } catch (IOException refused) {
            trouble.add(whyUnfinished(refused, isThere));
        } catch (UncheckedIOException unlisted) { // a folder that went while it was listed
            trouble.add(whyUnfinished(new IOException(unlisted), isThere));
        } finally {
            dropSnapshot();
        }
        return new Tally(copied, kept, readBack, trouble);
    }

    private static String whyUnfinished(IOException refused, BooleanSupplier isThere) {
        if (Thread.currentThread().isInterrupted()) {
            return "the logger was stopped before the drive was finished. Nothing is harmed; it goes on at the next start";
        }
        return isThere.getAsBoolean()
                ? "the drive is not finished (" + refused.getMessage() + "). Pull it out, put it in again,"
                        + " or take another"
                : "the drive was pulled out before it was finished. Nothing is harmed; put it in again and"
                        + " it goes on";
    }

    /** Also refuses when this thread was interrupted: the recorder is about to close. */
    private static void requireThere(BooleanSupplier isThere) throws IOException {
        if (!isThere.getAsBoolean()) {
            throw new IOException("it is not there any more");
        }
        requireRunning();
    }

    private static void requireRunning() throws IOException {
        if (Thread.currentThread().isInterrupted()) {
            throw new InterruptedIOException("the logger stops");
        }
    }

    /** Makes {@code tautlog/WINCH}, and leaves nothing of it where the drive is not: it may go between two looks. */
    private Path folder(Path drive, BooleanSupplier isThere) throws IOException {
        requireThere(isThere);
        Path ours = drive.resolve("tautlog");
        Path folder = ours.resolve(RecordingName.safe(files.winch()));
        Files.createDirectories(folder);
        if (!isThere.getAsBoolean()) {
            Files.deleteIfExists(folder);
            Files.deleteIfExists(ours);
        }
        requireThere(isThere);
        try (Stream<Path> all = Files.list(folder)) {
            for (Path left : all.filter(DriveCopy::isUnfinished).toList()) {
                Files.delete(left);
            }
        }
        return folder;
    }

    private List<Path> recordings() throws IOException {
        try (Stream<Path> all = Files.list(files.folder())) {
            return all.filter(file -> file.toString().endsWith(RecordingName.ENDING))
                    .sorted()
                    .toList();
        }
    }

    private void one(Path recording, BooleanSupplier mayBeWritten, Path folder, DriveCopy copy) throws IOException {
        try {
            Optional<String> sealed = files.door().read(() -> sealedLink(recording));
            if (sealed.isEmpty()) {
                return; // no outing began in it
            }
            if (copy.isThere(recording)) {
                kept++;
            } else if (!bring(recording, mayBeWritten.getAsBoolean(), folder, copy)) {
                return;
            }
            note(name(recording), sealed.get());
        } catch (RecordingException | NoSuchFileException unreadable) {
            if (Files.exists(folder) && Files.exists(recording)) { // else it got its day's name meanwhile
                trouble.add("a recording here cannot be copied (" + unreadable.getMessage() + ")");
            }
        }
    }

    /** A copy that somebody made here may have a name that no line can hold; its original has a line. */
    private void note(String name, String link) {
        if (name.chars().noneMatch(Character::isWhitespace)) {
            links.add(new NotedLink(clock.instant(), name, link));
        }
    }

    private boolean mayBeWritten(Path recording, Optional<Path> beingWritten) {
        return beingWritten.equals(Optional.of(recording)) || files.mayBeBegunIn(recording, clock.instant());
    }

    private static String name(Path recording) {
        return String.valueOf(recording.getFileName());
    }

    private static Optional<String> sealedLink(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.lastSealedLink();
        }
    }

    /** False when there was no room. */
    private boolean bring(Path recording, boolean mayBeWritten, Path folder, DriveCopy copy) throws IOException {
        long bytes = bytes(recording);
        if (Files.getFileStore(folder).getUsableSpace() < bytes + BESIDE_BYTES) {
            noRoom.add(name(recording));
            return false;
        }
        if (!mayBeWritten) {
            brought(copy.bring(recording, name(recording)));
            return true;
        }
        if (space.bytes().filter(free -> free < bytes + DiskReserve.BYTES).isPresent()) {
            trouble.add(name(recording)
                    + " may be written at any moment and the disk of the recordings has no room for a copy"
                    + " of it; take it on another day, or make room");
            return false;
        }
        brought(copy.bring(snapshot(recording), name(recording)));
        return true;
    }

    private Path snapshot(Path recording) throws IOException {
        requireRunning();
        Path snapshot = files.folder().resolve(SNAPSHOT);
        return files.door().read(() -> {
            RecordingCopy.write(recording, snapshot);
            return snapshot;
        });
    }

    private void brought(ReadBack from) {
        copied++;
        readBack = readBack == ReadBack.MEMORY ? ReadBack.MEMORY : from;
    }

    /** With its log. */
    private static long bytes(Path recording) throws IOException {
        Path log = recording.resolveSibling(name(recording) + "-wal");
        return Files.size(recording) + (Files.exists(log) ? Files.size(log) : 0);
    }

    private void tellRoom() {
        if (!noRoom.isEmpty()) {
            trouble.add("the drive has no room for " + String.join(", ", noRoom.subList(0, Math.min(3, noRoom.size())))
                    + (noRoom.size() > 3 ? " and " + (noRoom.size() - 3) + " more" : "")
                    + ". Make room on it, or take another");
        }
    }

    private void dropSnapshot() {
        try {
            RecordingCopy.remove(files.folder().resolve(SNAPSHOT));
        } catch (IOException stays) {
            trouble.add("a snapshot of today stays on the disk of the recordings (" + stays.getMessage() + ")");
        }
    }
}
