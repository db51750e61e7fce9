package tautlog.desk.use;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32C;
import tautlog.desk.progress.Kept;

/**
 * The cache's file: lines that are only ever appended, the last line of a key holds.
 *
 * <pre>
 *   ["CRC-32C of key and value","key",{value}]
 * </pre>
 *
 * <p>A line that is torn, damaged or foreign is passed over. Several processes may append; each appends with one write, what still
 * goes wrong spoils lines, and these are passed over. When the file is longer than {@link #MOST_BYTES} it is written anew with the
 * younger of its living lines. Trouble with the disk is no error: then less is remembered. Safe for threads.
 */
final class CacheFile {
    static final String NAME = "use.jsonl";
    /** Chosen: about ten seasons of three winches. */
    static final long MOST_BYTES = 64L << 20;

    /** Chosen: a first run that is stopped halfway loses the last few outings only. */
    private static final int LINES_AT_ONCE = 64;

    private static final int CRC_FROM = 2;
    private static final int CRC_TO = 10;
    private static final int REST_FROM = 12;
    private static final int KEY_LENGTH = 32;
    private static final int VALUE_FROM = REST_FROM + 1 + KEY_LENGTH + 2;

    private final Optional<Path> file;
    private final Map<String, String> lineByKey = new LinkedHashMap<>();
    private final List<String> fresh = new ArrayList<>();
    private final long mostBytes;
    private boolean lost;
    private boolean closed;

    private CacheFile(Optional<Path> file, long mostBytes) {
        this.file = file;
        this.mostBytes = mostBytes;
    }

    static CacheFile none() {
        return new CacheFile(Optional.empty(), MOST_BYTES);
    }

    static CacheFile read(Path folder) {
        return read(folder, MOST_BYTES);
    }

    static CacheFile read(Path folder, long mostBytes) {
        CacheFile cache = new CacheFile(Optional.of(folder.resolve(NAME)), mostBytes);
        try {
            Files.createDirectories(folder);
            if (Files.exists(folder.resolve(NAME))) {
                String text = new String(Files.readAllBytes(folder.resolve(NAME)), StandardCharsets.UTF_8);
                text.lines().forEach(cache::take);
            }
        } catch (IOException e) {
            return none(); // a home that cannot be read or written: nothing is remembered
        }
        return cache;
    }

    /** 32 hexadecimal characters that stand for {@code parts}. */
    static String key(String... parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String part : parts) {
                digest.update(part.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
            }
            return HexFormat.of().formatHex(digest.digest()).substring(0, KEY_LENGTH);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private void take(String line) {
        if (isSound(line)) {
            String key = line.substring(REST_FROM + 1, REST_FROM + 1 + KEY_LENGTH);
            lineByKey.remove(key); // the younger a line, the later it stands
            lineByKey.put(key, line);
        }
    }

    private static boolean isSound(String line) {
        return line.length() > VALUE_FROM
                && line.startsWith("[\"")
                && line.endsWith("]")
                && line.substring(CRC_FROM, CRC_TO).equals(crc(line.substring(REST_FROM, line.length() - 1)));
    }

    private static String crc(String rest) {
        CRC32C crc = new CRC32C();
        crc.update(rest.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().toHexDigits((int) crc.getValue());
    }

    /** What was put under {@code key} last; empty when nothing was, or this program cannot read it. */
    <T> Optional<T> value(String key, Class<T> type) {
        String line = line(key);
        if (line.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.ofNullable(UseJson.GSON.fromJson(line.substring(VALUE_FROM, line.length() - 1), type));
        } catch (RuntimeException e) { // also what a record says of values that another program wrote
            return Optional.empty();
        }
    }

    /** Whether anything is remembered under {@code key}, readable or not. */
    boolean has(String key) {
        return !line(key).isEmpty();
    }

    /** Empty when there is none. */
    private synchronized String line(String key) {
        return lineByKey.getOrDefault(key, "");
    }

    synchronized void put(String key, Object value) {
        String rest = "\"" + key + "\"," + UseJson.GSON.toJson(value);
        String line = "[\"" + crc(rest) + "\"," + rest + "]";
        take(line);
        fresh.add(line);
        if (fresh.size() >= LINES_AT_ONCE) {
            append();
        }
    }

    /** Appends what was put since and is not there yet. */
    synchronized void append() {
        if (file.isEmpty() || fresh.isEmpty() || closed) {
            return;
        }
        try {
            // the line feed in front ends what somebody left torn
            byte[] lines = ("\n" + String.join("\n", fresh) + "\n").getBytes(StandardCharsets.UTF_8);
            Files.write(file.get(), lines, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        } catch (IOException e) {
            lost = true; // a full or read-only disk: it is read again the next time
        }
        fresh.clear();
        try {
            if (Files.size(file.get()) > mostBytes) {
                shorten(file.get());
            }
        } catch (IOException e) {
            return; // it stays long, with all that is in it
        }
    }

    /** Appends what is not there yet, for the last time; tells whether what was put is in the file. */
    synchronized Kept close() {
        append();
        closed = true;
        if (file.isEmpty()) {
            return Kept.NOTHING;
        }
        return lost ? Kept.NOT_ALL : Kept.READ_SO_FAR;
    }

    private void shorten(Path whole) throws IOException {
        List<String> all = new ArrayList<>(lineByKey.values());
        long bytes = 0;
        int from = all.size();
        while (from > 0 && bytes + all.get(from - 1).length() < mostBytes / 2) {
            from--;
            bytes += all.get(from).length() + 1L;
        }
        Path shorter = Files.createTempFile(whole.getParent(), NAME, ".new");
        try {
            Files.write(shorter, all.subList(from, all.size()), StandardCharsets.UTF_8);
            Files.move(shorter, whole, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(shorter);
        }
    }
}
