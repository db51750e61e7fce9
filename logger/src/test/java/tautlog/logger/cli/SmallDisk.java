package tautlog.logger.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A disk of some megabytes in memory, mounted on a folder, that can be filled. Linux, as root. */
final class SmallDisk implements AutoCloseable {
    private final Path folder;
    private final Path filler;

    private SmallDisk(Path folder) {
        this.folder = folder;
        filler = folder.resolve("filler");
    }

    /** Mounts it; skips the test when the system refuses. */
    static SmallDisk mount(Path folder, int megabytes) throws IOException {
        Files.createDirectories(folder);
        String refusal;
        try {
            refusal =
                    command("mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m", "tautlog-test", folder.toString());
        } catch (IOException noMount) {
            refusal = String.valueOf(noMount.getMessage());
        }
        if (!refusal.isEmpty()) {
            Mandatory.skip("a full disk needs a small one, and mounting it was refused: " + refusal);
        }
        return new SmallDisk(folder);
    }

    /** What a command said; empty when it did its work. */
    static String command(String... words) throws IOException {
        Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int code = process.onExit().join().exitValue();
        return code == 0 ? "" : said.strip() + " (exit code " + code + ")";
    }

    long freeBytes() throws IOException {
        return Files.getFileStore(folder).getUsableSpace();
    }

    /** Another program fills it, all but {@code bytes}. */
    void fillUpTo(long bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(
                filler, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
            while (freeBytes() > bytes) {
                channel.write(ByteBuffer.allocate((int) Math.min(1 << 20, freeBytes() - bytes)));
            }
        }
    }

    /** What filled it is taken away. */
    void free() throws IOException {
        Files.delete(filler);
    }

    @Override
    public void close() throws IOException {
        String refusal = command("umount", folder.toString());
        if (!refusal.isEmpty()) {
            command("umount", "-l", folder.toString());
        }
    }
}
