package tautlog.desk.pyramid;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.CRC32C;
import java.util.zip.CheckedInputStream;
import java.util.zip.CheckedOutputStream;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;

/**
 * The file of a recording's pyramids: those of closed outings, tied to the recording by its id and its last sealed link. It may be deleted
 * at any time. Written beside and renamed, so that it is whole or not there; one that is torn, foreign or of another version is not used.
 */
public final class PyramidStore {
    static final String ENDING = ".pyramid";
    private static final long MAGIC = 0x5461_7574_5079_7201L;

    private PyramidStore() {}

    /** What of {@code recording} stands in {@code folder}, by the outing's index; nothing when it does not belong to it any more. */
    public static Map<Integer, OutingPyramid> read(Path folder, Recording recording) throws RecordingException {
        Path file = file(folder, recording.id());
        if (!Files.isRegularFile(file)) {
            return Map.of();
        }
        try (InputStream stream = new BufferedInputStream(Files.newInputStream(file))) {
            return read(stream, recording);
        } catch (RecordingException e) {
            throw e;
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException | OutOfMemoryError torn) {
            return Map.of(); // made anew
        }
    }

    private static Map<Integer, OutingPyramid> read(InputStream stream, Recording recording) throws IOException {
        CheckedInputStream checked = new CheckedInputStream(stream, new CRC32C());
        DataInputStream in = new DataInputStream(checked);
        if (in.readLong() != MAGIC || !in.readUTF().equals(recording.id()) || !recording.goesThrough(in.readUTF())) {
            return Map.of();
        }
        Map<Integer, Outing> outings = new TreeMap<>();
        recording.outings().forEach(outing -> outings.put(outing.index(), outing));
        Map<Integer, OutingPyramid> read = new TreeMap<>();
        int n = in.readInt();
        for (int i = 0; i < n; i++) {
            int index = in.readInt();
            Outing outing = outings.get(index);
            if (outing == null || outing.thinned()) {
                return Map.of();
            }
            OutingPyramid pyramid = OutingPyramid.read(outing.start().instrument(), in);
            if (pyramid.samples() == outing.samples()) {
                read.put(index, pyramid);
            }
        }
        long crc = checked.getChecksum().getValue();
        return in.readLong() == crc ? read : Map.of();
    }

    /**
     * Keeps the pyramids of closed outings.
     *
     * @param pyramids by the outing's index
     * @throws IOException if the folder cannot be written: then they stay in memory only
     */
    public static void write(Path folder, Recording recording, Map<Integer, OutingPyramid> pyramids)
            throws IOException {
        Files.createDirectories(folder);
        Path file = file(folder, recording.id());
        Path beside = Files.createTempFile(folder, recording.id(), ".part");
        try {
            try (OutputStream stream = new BufferedOutputStream(Files.newOutputStream(beside))) {
                write(stream, recording, pyramids);
            }
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    private static void write(OutputStream stream, Recording recording, Map<Integer, OutingPyramid> pyramids)
            throws IOException {
        CheckedOutputStream checked = new CheckedOutputStream(stream, new CRC32C());
        DataOutputStream out = new DataOutputStream(checked);
        out.writeLong(MAGIC);
        out.writeUTF(recording.id());
        out.writeUTF(recording.sealedLink());
        out.writeInt(pyramids.size());
        for (Map.Entry<Integer, OutingPyramid> one : pyramids.entrySet()) {
            out.writeInt(one.getKey());
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            one.getValue().write(new DataOutputStream(bytes));
            bytes.writeTo(out);
        }
        out.flush();
        out.writeLong(checked.getChecksum().getValue());
        out.flush();
    }

    private static Path file(Path folder, String recordingId) {
        return folder.resolve(recordingId.replaceAll("[^0-9a-z]", "_") + ENDING);
    }
}
