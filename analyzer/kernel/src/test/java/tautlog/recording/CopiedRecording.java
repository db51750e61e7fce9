package tautlog.recording;

import java.io.IOException;
import java.nio.file.Path;

/** Copies a recording and its log with another program: a handle of our own on the file would drop SQLite's locks. */
final class CopiedRecording {
    private CopiedRecording() {}

    static void copy(Path file, Path to) throws IOException {
        cp(file, to);
        Path log = RecordingFile.log(file);
        if (RecordingFile.hasLog(file)) {
            cp(log, RecordingFile.log(to));
        }
    }

    private static void cp(Path from, Path to) throws IOException {
        Process cp = new ProcessBuilder("cp", from.toString(), to.toString())
                .inheritIO()
                .start();
        try {
            if (cp.waitFor() != 0) {
                throw new IOException("cp " + from + " " + to + " failed");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }
}
