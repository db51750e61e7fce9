package tautlog.logger.installed;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A command that was run to its end, and what it said on both streams. */
record Ran(int code, String said) {
    static Ran command(List<String> words) throws IOException {
        Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ran(process.onExit().join().exitValue(), said);
    }

    static Ran command(String... words) throws IOException {
        return command(List.of(words));
    }

    /** What it said, if it ended well. */
    String wellDone() {
        if (code != 0) {
            throw new AssertionError("exit code " + code + ": " + said);
        }
        return said;
    }
}
