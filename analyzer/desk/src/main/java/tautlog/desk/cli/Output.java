package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import tautlog.recording.RecordingName;

/** Where a result goes: a file, or the standard output when it is called {@code -}. */
final class Output {
    private static final String STANDARD = "-";

    private Output() {}

    static boolean isStandard(String target) {
        return target.equals(STANDARD);
    }

    /**
     * Opens {@code target} for a text in UTF-8; the standard output stays open when the writer is closed.
     *
     * @throws UsageException if it would overwrite a recording
     */
    static Writer open(String option, String target, PrintWriter standard) throws IOException, UsageException {
        if (isStandard(target)) {
            return new Unclosed(standard);
        }
        return Files.newBufferedWriter(file(option, target), StandardCharsets.UTF_8);
    }

    /**
     * A file that may be written.
     *
     * @throws UsageException if it would overwrite a recording
     */
    static Path file(String option, String target) throws UsageException {
        if (target.endsWith(RecordingName.ENDING)) {
            throw new UsageException(option + ": " + target
                    + " is named like a recording, which is never overwritten.\n" + "  Give the file another ending.");
        }
        return Path.of(target);
    }

    /** Writes on, and only flushes at the end. */
    private static final class Unclosed extends Writer {
        private final PrintWriter standard;

        Unclosed(PrintWriter standard) {
            this.standard = standard;
        }

        @Override
        public void write(char[] text, int from, int n) {
            standard.write(text, from, n);
        }

        @Override
        public void flush() {
            standard.flush();
        }

        @Override
        public void close() {
            standard.flush();
        }
    }
}
