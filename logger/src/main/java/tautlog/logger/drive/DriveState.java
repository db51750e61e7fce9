package tautlog.logger.drive;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The drive, and what became of the last visit.
 *
 * @param path where a drive is looked for
 * @param plugged whether one is there now
 * @param stage of the last visit since the logger started
 * @param at when that stage began; empty for {@link Stage#NONE}
 * @param tally what it did
 */
public record DriveState(Path path, boolean plugged, Stage stage, Optional<Instant> at, Tally tally) {

    /** How far a visit came. */
    public enum Stage {
        /** No drive was there since the logger started. */
        NONE,
        /** Being written: leave it in. */
        WRITING,
        /** All recordings are on it, and were read again and verified. */
        VERIFIED,
        /** Not all are; {@link Tally#trouble} says why. */
        TROUBLE
    }

    /**
     * What one visit did.
     *
     * @param copied recordings that were copied and verified
     * @param kept recordings that were there already, as long or longer
     * @param readBack from where the copies were read again
     * @param trouble a sentence each
     */
    public record Tally(int copied, int kept, ReadBack readBack, List<String> trouble) {
        static final Tally NOTHING = new Tally(0, 0, ReadBack.NOTHING, List.of());

        public Tally {
            trouble = List.copyOf(trouble);
        }
    }

    /** From where a copy was read again after it was written. */
    public enum ReadBack {
        NOTHING,
        /** From the drive itself. */
        DRIVE,
        /** At least one from the system's memory, since this kind of file system does not let us past it. */
        MEMORY
    }
}
