package tautlog.desk.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Where a result is printed. It remembers that it could not be written: the writers above it, which commands print to, tell nobody. After
 * the first trouble nothing more is written, so that no piece is missing amid a result. One thread.
 */
final class StandardOutput extends OutputStream {
    /** What is at the other end. */
    enum End {
        /** Whoever reads may have seen enough and gone ({@code | head}): that is no trouble, and nothing else goes wrong with a pipe. */
        PIPE,
        OTHER
    }

    private static final int FILE_TYPE = 0170000;
    private static final int FIFO = 0010000;
    private static final int SOCKET = 0140000;

    private final OutputStream out;
    private final End end;
    private Optional<IOException> trouble = Optional.empty();

    StandardOutput(OutputStream out, End end) {
        this.out = out;
        this.end = end;
    }

    /** That of this process. */
    static StandardOutput ofProcess() {
        return new StandardOutput(new FileOutputStream(FileDescriptor.out), end(Path.of("/dev/fd/1")));
    }

    /** What {@code descriptor} leads to; {@link End#OTHER} where the system does not tell. Its words for a closed pipe go by the language. */
    static End end(Path descriptor) {
        try {
            int type = Files.getAttribute(descriptor, "unix:mode") instanceof Integer mode ? mode & FILE_TYPE : 0;
            return type == FIFO || type == SOCKET ? End.PIPE : End.OTHER;
        } catch (IOException | UnsupportedOperationException | IllegalArgumentException e) {
            return End.OTHER;
        }
    }

    /** Why what was printed is not all there, one sentence and what to do; empty when it is, or its reader went away. */
    Optional<String> complaint() {
        return end == End.PIPE
                ? Optional.empty()
                : trouble.map(e -> "The standard output could not be written, what stands there is not complete: "
                        + e.getMessage() + "\n  Free space, or choose another place, and give the same command again.");
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int n) throws IOException {
        attempt(() -> out.write(bytes, from, n));
    }

    @Override
    public void flush() throws IOException {
        attempt(out::flush);
    }

    private interface Attempt {
        void make() throws IOException;
    }

    private void attempt(Attempt attempt) throws IOException {
        if (trouble.isPresent()) {
            throw trouble.get();
        }
        try {
            attempt.make();
        } catch (IOException e) {
            trouble = Optional.of(e);
            throw e;
        }
    }
}
