package tautlog.logger.drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import tautlog.logger.drive.DriveState.ReadBack;
import tautlog.logger.recorder.RecordingDoor;
import tautlog.recording.Recording;
import tautlog.recording.RecordingCopy;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;
import tautlog.recording.Verification;

/**
 * Brings one recording into a folder of the drive. Under its name stands at every moment a whole recording or none: the copy is made
 * as {@code NAME.part}, flushed, read back, verified, and only then renamed.
 */
final class DriveCopy {
    /** The ending of a copy that is not finished, behind the recording's name. */
    static final String UNFINISHED = ".part";

    private final Path folder;
    private final RecordingDoor door;

    /** Whether a file of this name is a copy that was not finished, or its journal. */
    static boolean isUnfinished(Path file) {
        String name = file.toString();
        return name.endsWith(UNFINISHED) || name.endsWith(UNFINISHED + RecordingCopy.JOURNAL);
    }

    /**
     * @param folder on the drive, is there
     * @param door through which recordings of this computer are read
     */
    DriveCopy(Path folder, RecordingDoor door) {
        this.folder = folder;
        this.door = door;
    }

    /** The drive already holds this state of the recording, or more of it. */
    boolean isThere(Path recording) throws IOException {
        Path name = nameFor(recording, String.valueOf(recording.getFileName()));
        return Files.exists(name)
                && (fromDrive(() -> lastLink(name)).equals(door.read(() -> lastLink(recording)))
                        || holdsMore(name, recording));
    }

    /**
     * Copies it.
     *
     * @param recording on this computer, one that the recorder does not open or close: it is read for as long as the drive takes
     * @param plain its name, by which the drive is to have it
     * @throws RecordingException if {@code recording} cannot be read
     * @throws IOException if the drive refuses, or does not give back what was written
     */
    ReadBack bring(Path recording, String plain) throws IOException {
        Path name = nameFor(recording, plain);
        Path part = name.resolveSibling(name.getFileName() + UNFINISHED);
        RecordingCopy.write(recording, part);
        Medium.flush(part);
        ReadBack readBack = Medium.compare(part);
        requireSame(recording, part);
        Files.move(part, name, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        Medium.flush(folder);
        return readBack;
    }

    /**
     * The name {@code plain}, or that with {@code _2} and so on when another recording has it on the drive. Two are the same when their
     * chains begin with the same link; what cannot be read is another.
     */
    private Path nameFor(Path recording, String plain) throws IOException {
        String stem = plain.substring(0, plain.length() - RecordingName.ENDING.length());
        Optional<String> first = door.read(() -> firstLink(recording));
        Path name = folder.resolve(plain);
        for (int n = 2; Files.exists(name) && !isSame(name, first); n++) {
            name = folder.resolve(stem + "_" + n + RecordingName.ENDING);
        }
        return name;
    }

    private static boolean isSame(Path onDrive, Optional<String> first) {
        try {
            return firstLink(onDrive).equals(first);
        } catch (RecordingException unreadable) {
            return false;
        }
    }

    /** Raw samples may have been taken out of a recording here after it was copied; the fuller one is kept. */
    private boolean holdsMore(Path onDrive, Path recording) throws IOException {
        return fromDrive(() -> verify(onDrive)).samples()
                > door.read(() -> verify(recording)).samples();
    }

    /** A recording that is damaged here is copied with its damage, and not called intact by that. */
    private void requireSame(Path recording, Path copy) throws IOException {
        Verification found = fromDrive(() -> verify(copy));
        boolean isSame = door.read(() -> lastLink(recording)).equals(found.lastLink());
        if (isSame && !found.isIntact()) {
            Verification original = door.read(() -> verify(recording));
            isSame = original.samples() == found.samples()
                    && original.blocks() == found.blocks()
                    && original.damages().size() == found.damages().size();
        }
        if (!isSame) {
            throw new IOException(copy + ": read again, it is not what was copied. Take another drive.");
        }
    }

    private interface Reading<T> {
        T read() throws RecordingException;
    }

    /** What cannot be read from the drive is trouble of the drive, not of the recording. */
    private static <T> T fromDrive(Reading<T> reading) throws IOException {
        try {
            return reading.read();
        } catch (RecordingException refused) {
            throw new IOException(refused.getMessage(), refused);
        }
    }

    private static Optional<String> firstLink(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.firstLink();
        }
    }

    private static String lastLink(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.lastLink();
        }
    }

    private static Verification verify(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.verify();
        }
    }
}
