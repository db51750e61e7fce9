package tautlog.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * Takes the readings of outings that told nothing ({@link ThinnableOutings}) out of a recording that is closed, and gives their
 * room back to the disk. {@code analyzer/RECORDING.md}, "Thinned".
 *
 * <pre>
 *   X.tautlog ──▶ X.tautlog-thin: all rows, stubs for blocks of samples, a row that says so ──▶ verified ──▶ renamed to X.tautlog
 * </pre>
 *
 * How it is replaced: {@link ReplacingCopy}. One thread.
 */
public final class Thinner {
    /** What follows the name of a recording while its thinned copy is made. */
    private static final String ENDING = "-thin";

    private final Path file;
    private final ReplacingCopy beside;

    private Thinner(Path file) {
        this.file = file;
        this.beside = new ReplacingCopy(file, ENDING);
    }

    /**
     * Thins outings, the oldest first, until {@code wantedBytes} are given back or none is left.
     *
     * @param freeBytes of the disk: the thinned copy must find room beside the file
     * @param utcMicros now, in microseconds since 1970; empty while no clock is known
     * @throws RecordingException if the file cannot be read, is being written, or there is no room; it is as it was then
     */
    public static Thinned thin(Path file, long wantedBytes, long freeBytes, OptionalLong utcMicros)
            throws RecordingException {
        return new Thinner(file).thin(wantedBytes, freeBytes, utcMicros);
    }

    /** Deletes what a power cut left of a copy of {@code file}. */
    public static void deleteLeftOver(Path file) throws IOException {
        new ReplacingCopy(file, ENDING).deleteLeftOver();
    }

    private Thinned thin(long wantedBytes, long freeBytes, OptionalLong utcMicros) throws RecordingException {
        if (!beside.leavesLogMode(Outing::closed)) {
            return Thinned.NOTHING;
        }
        return beside.locked("thinned", () -> thinLocked(wantedBytes, freeBytes, utcMicros));
    }

    private Thinned thinLocked(long wantedBytes, long freeBytes, OptionalLong utcMicros)
            throws SQLException, IOException {
        List<Outing> chosen;
        Verification before;
        try (Recording recording = Recording.open(file)) {
            before = recording.verify();
            chosen = choose(recording, before, wantedBytes, freeBytes);
            if (chosen.isEmpty()) {
                return Thinned.NOTHING;
            }
            ThinnedCopy.write(file, beside.copy(), chosen, utcMicros);
        }
        requireSame(before);
        long bytes = Files.size(file) - Files.size(beside.copy());
        beside.takePlace();
        long samples = chosen.stream().mapToLong(Outing::samples).sum();
        return new Thinned(chosen.size(), samples, bytes);
    }

    private List<Outing> choose(Recording recording, Verification verified, long wantedBytes, long freeBytes)
            throws IOException {
        List<Outing> chosen = new ArrayList<>();
        long bytes = 0;
        for (Outing outing : new ThinnableOutings(recording).list(verified)) {
            if (bytes < wantedBytes) {
                chosen.add(outing);
                bytes += recording.sampleBytes(outing);
            }
        }
        long room = Files.size(file) - bytes;
        if (!chosen.isEmpty() && room > freeBytes) {
            throw new RecordingException(file + ": thinning needs " + (room >> 10) + " KiB for the smaller copy, "
                    + (freeBytes >> 10) + " are free. Free space.");
        }
        return chosen;
    }

    /** Readings that are gone cannot be had again: so the copy is checked whole before it takes the file's place. */
    private void requireSame(Verification before) throws RecordingException {
        try (Recording recording = Recording.open(beside.copy())) {
            Verification after = recording.verify();
            if (!after.damages().equals(before.damages())
                    || !after.lost().equals(before.lost())
                    || after.outings().size() != before.outings().size()) {
                throw new RecordingException(file + ": its thinned copy is not what it should be: " + after.damages());
            }
        }
    }
}
