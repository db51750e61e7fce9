package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.opentest4j.TestAbortedException;

/** The C files of {@code firmware-notes/reference}, compiled with every warning an error, and run. */
final class CReference {
    /** How they are compiled. */
    enum Build {
        PLAIN("-O2"),
        /** Stops at the first byte read or written out of place and at the first undefined operation. */
        SANITIZED("-O1", "-fsanitize=address,undefined", "-fno-sanitize-recover=all");

        private final List<String> flags;

        Build(String... flags) {
            this.flags = List.of(flags);
        }
    }

    private static final Path SOURCES = Path.of(System.getProperty("tautlog.root"), "firmware-notes", "reference");

    /** As {@code firmware-notes/reference/README.md} says. */
    private static final List<String> STRICT =
            List.of("cc", "-std=c11", "-Wall", "-Wextra", "-Wpedantic", "-Wconversion", "-Werror");

    private final Path folder;
    private final Path program;

    private CReference(Path folder, Path program) {
        this.folder = folder;
        this.program = program;
    }

    /**
     * Compiles the format together with {@code mains}; skips the test where there is no C compiler, or none with sanitizers.
     *
     * @param folder for the program and its output
     */
    static CReference compile(Path folder, Build build, String... mains) throws IOException {
        Path program = folder.resolve(mains[0] + "-" + build);
        List<Path> sources = new ArrayList<>();
        for (String name : List.of("tautlog_wire", "tautlog_frame")) {
            sources.add(SOURCES.resolve(name + ".c"));
        }
        for (String name : mains) {
            sources.add(SOURCES.resolve(name + ".c"));
        }
        try {
            String said = compiler(folder, build, program, sources);
            if (!said.isEmpty()) {
                requireWorkingCompiler(folder, build);
            }
            assertEquals("", said, "the C compiler has nothing to say");
        } catch (IOException noCompiler) {
            throw skipped("comparing with the C reference needs a C compiler: " + noCompiler.getMessage());
        }
        return new CReference(folder, program);
    }

    /** A compiler that cannot even build a program without content: that is not the reference's fault. */
    private static void requireWorkingCompiler(Path folder, Build build) throws IOException {
        Path smallest =
                Files.writeString(folder.resolve("smallest.c"), "#include <stdio.h>\nint main(void) { return 0; }\n");
        String said = compiler(folder, build, folder.resolve("smallest"), List.of(smallest));
        if (!said.isEmpty()) {
            throw skipped("the C compiler cannot build " + build + ": "
                    + said.lines().findFirst().orElse(""));
        }
    }

    /** A skip that says why; a failure where {@code TAUTLOG_MANDATORY=1} says that nothing may be skipped. */
    private static TestAbortedException skipped(String reason) {
        if ("1".equals(System.getenv("TAUTLOG_MANDATORY"))) {
            fail("skipped although TAUTLOG_MANDATORY=1: " + reason);
        }
        System.err.println("skipped: " + reason); // a skip is no pass: it is seen in the build's output
        return new TestAbortedException(reason);
    }

    /** What the compiler said; empty when it had nothing to say and made the program. */
    private static String compiler(Path folder, Build build, Path program, List<Path> sources) throws IOException {
        List<String> command = new ArrayList<>(STRICT);
        command.addAll(build.flags);
        command.addAll(List.of("-o", program.toString()));
        sources.forEach(source -> command.add(source.toString()));
        Path said = folder.resolve("compiler.txt");
        int code = exitCode(new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start());
        String text = Files.readString(said);
        return code == 0 || !text.isEmpty() ? text : "exit code " + code;
    }

    /** Runs the program to its end, which must be exit code 0. */
    Output run(byte[] input, String... arguments) throws IOException {
        Path in = Files.write(folder.resolve("in"), input);
        Path out = folder.resolve("out");
        Path err = folder.resolve("err");
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(arguments));
        int code = exitCode(new ProcessBuilder(command)
                .redirectInput(in.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start());
        Output output = new Output(Files.readAllBytes(out), Files.readAllLines(err));
        assertEquals(0, code, () -> String.join("\n", output.errors));
        return output;
    }

    private static int exitCode(Process process) {
        return process.onExit().join().exitValue();
    }

    /** What a program wrote. */
    record Output(byte[] bytes, List<String> errors) {
        List<String> lines() {
            return new String(bytes, java.nio.charset.StandardCharsets.US_ASCII)
                    .lines()
                    .toList();
        }
    }
}
