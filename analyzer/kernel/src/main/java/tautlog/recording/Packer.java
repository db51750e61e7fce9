package tautlog.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;

/**
 * Puts a recording that is closed away in less room: nothing is lost, every link stays. {@code analyzer/RECORDING.md}, "Packed".
 *
 * <pre>
 *   X.tautlog ──▶ X.tautlog-pack: all rows, blocks coded for keeping ──▶ verified ──▶ renamed to X.tautlog
 * </pre>
 *
 * How it is replaced: {@link ReplacingCopy}. One thread.
 */
public final class Packer {
    /** What follows the name of a recording while its packed copy is made. */
    private static final String ENDING = "-pack";

    private final Path file;
    private final ReplacingCopy beside;

    private Packer(Path file) {
        this.file = file;
        this.beside = new ReplacingCopy(file, ENDING);
    }

    /**
     * Packs one recording in place. A log that a power cut left beside it is folded in first, as the next start of the logger does. One
     * that is packed already is verified and stays; what a kill left beside it is cleared away where that can be done.
     *
     * @throws RecordingException if the file cannot be read, is damaged, lacks rows, is being written or read by another program, is
     *     write-protected or has a second name, or there is no room; it is as it was then
     */
    public static Packed pack(Path file) throws RecordingException {
        boolean isPacked;
        try (Recording recording = Recording.open(file)) {
            isPacked = recording.isPacked();
        }
        Packer packer = new Packer(real(file));
        return isPacked ? packer.keep() : packer.pack();
    }

    /** A link stays a link: what it points to is packed. */
    private static Path real(Path file) throws RecordingException {
        try {
            return file.toRealPath();
        } catch (IOException e) {
            throw failed(file, e);
        }
    }

    private static RecordingException failed(Path file, IOException e) {
        return new RecordingException(file + ": cannot be packed: " + e.getMessage(), e);
    }

    /** Beside a damaged file all stays. */
    private Packed keep() throws RecordingException {
        Packed packed = intact();
        beside.clearLeftOver();
        return packed;
    }

    private Packed intact() throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            Verification found = recording.verify();
            requireIntact(found, "is packed already, and is");
            long bytes = Files.size(file);
            return new Packed(found.samples(), bytes, bytes);
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw failed(file, e);
        }
    }

    private Packed pack() throws RecordingException {
        beside.requireReplaceable();
        if (!beside.leavesLogMode(outing -> true)) {
            throw RecordingException.ofThisFile(
                    file + ": is not packed: rows of it are missing. `tautlog verify` says which.");
        }
        return beside.locked("packed", this::packLocked);
    }

    private Packed packLocked() throws SQLException, IOException {
        Verification before;
        try (Recording recording = Recording.open(file)) {
            before = recording.verify();
            requireIntact(before, "is not packed and stays as it is: it is");
            PackedCopy.write(file, beside.copy());
            try (Recording copy = Recording.open(beside.copy())) {
                requireSame(recording, before, copy);
            }
        }
        long bytesBefore = Files.size(file);
        long bytesAfter = Files.size(beside.copy());
        if (bytesAfter >= bytesBefore) {
            beside.deleteLeftOver();
            return new Packed(before.samples(), bytesBefore, bytesBefore);
        }
        beside.takePlace();
        return new Packed(before.samples(), bytesBefore, bytesAfter);
    }

    /** Damage stays where it can still be looked at. */
    private void requireIntact(Verification found, String what) throws RecordingException {
        if (!found.isIntact()) {
            throw RecordingException.ofThisFile(file + ": " + what + " damaged or incomplete. `tautlog verify` names"
                    + " what; copy it again from the board if it is still there.");
        }
    }

    /** The chain holds the evidence; what was said live is compared one by one. */
    private void requireSame(Recording recording, Verification before, Recording copy) throws RecordingException {
        boolean same = copy.verify().equals(before)
                && copy.id().equals(recording.id())
                && copy.sealedLink().equals(recording.sealedLink());
        for (Outing outing : before.outings()) {
            same = same
                    && copy.seconds(outing).equals(recording.seconds(outing))
                    && copy.findings(outing).equals(recording.findings(outing));
        }
        if (!same) {
            throw new RecordingException(file + ": its packed copy is not what it should be; the file stays as it is."
                    + " That is a bug: please report it.");
        }
    }
}
