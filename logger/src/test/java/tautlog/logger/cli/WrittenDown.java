package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** All that a program did to the files of one folder, in order and with its time; {@code src/test/c/writes.c} writes it down. */
record WrittenDown(List<Change> changes) {
    private static final int HEAD_BYTES = 25;

    /** What was done; the C file has the same numbers. */
    enum What {
        NOTHING,
        CREATED,
        WROTE,
        CUT_TO,
        FLUSHED,
        FOLDER_FLUSHED,
        RENAMED,
        REMOVED
    }

    /**
     * @param nanos when it was done, by {@link System#nanoTime}
     * @param where offset in the file, or its new size
     * @param name of the file, without its folder
     * @param bytes written, or the new name
     */
    record Change(What what, long nanos, int where, String name, byte[] bytes) {
        String newName() {
            return fileName(new String(bytes, StandardCharsets.UTF_8));
        }
    }

    /**
     * Compiles the layer; skips the test where there is no C compiler.
     *
     * @return the library to load before the program's own
     */
    static Path compile(Path folder) throws IOException, InterruptedException {
        Path source = Path.of(System.getProperty("tautlog.root"), "logger", "src", "test", "c", "writes.c");
        Path library = folder.resolve("writes.so");
        try {
            Process compiler = new ProcessBuilder(
                            "cc",
                            "-std=c11",
                            "-O2",
                            "-Wall",
                            "-Wextra",
                            "-Werror",
                            "-shared",
                            "-fPIC",
                            "-o",
                            library.toString(),
                            source.toString())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(compiler.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(0, compiler.waitFor(), said);
        } catch (IOException noCompiler) {
            Mandatory.skip(
                    "power cuts are simulated by a layer in C, which needs a compiler: " + noCompiler.getMessage());
        }
        return library;
    }

    /**
     * What a program must be given so that its changes to {@code folder} stand in {@code journal}.
     *
     * @param disk a file that says how the disk ails while it is there; see the C file
     */
    static Map<String, String> environment(Path library, Path folder, Path journal, Path disk) {
        return Map.of(
                "LD_PRELOAD", library.toString(),
                "TAUTLOG_WRITES_OF", folder.toString(),
                "TAUTLOG_WRITES_TO", journal.toString(),
                "TAUTLOG_DISK", disk.toString());
    }

    static WrittenDown read(Path journal) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(journal)).order(ByteOrder.LITTLE_ENDIAN);
        List<Change> changes = new ArrayList<>();
        while (bytes.remaining() >= HEAD_BYTES) {
            What what = What.values()[bytes.get()];
            long nanos = bytes.getLong();
            int where = Math.toIntExact(bytes.getLong());
            byte[] name = new byte[bytes.getInt()];
            byte[] content = new byte[bytes.getInt()];
            bytes.get(name);
            bytes.get(content);
            changes.add(new Change(what, nanos, where, fileName(new String(name, StandardCharsets.UTF_8)), content));
        }
        assertEquals(0, bytes.remaining(), "the journal ends with a whole record");
        return new WrittenDown(changes);
    }

    private static String fileName(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }
}
