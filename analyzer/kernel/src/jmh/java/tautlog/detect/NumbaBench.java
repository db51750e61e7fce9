package tautlog.detect;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import tautlog.fixtures.Traces;
import tautlog.recording.CodedTrace;

/**
 * The tool's decoding and detectors, from coded blocks in memory, beside {@code chain.py}, a chain compiled by numba over plain int32 in
 * memory: the same 100 million samples, turn by turn, on one thread and on two. Both must find the same greatest, histogram, pulls and
 * overloads.
 */
public final class NumbaBench {
    private static final String PYTHON = System.getProperty("tautlog.python", "/usr/bin/python3");
    private static final Path CHAIN = Path.of("src", "jmh", "python", "chain.py");
    private static final int SAMPLES = Integer.getInteger("tautlog.samples", 100_000_000);
    private static final int WARMING = 3;
    private static final int ROUNDS = Integer.getInteger("tautlog.rounds", 9);
    private static final int CHUNK = 1 << 20;

    private final CodedTrace trace;
    private final Process python;
    private final BufferedReader answers;
    private final BufferedWriter questions;

    /** What was found, and how long it took. */
    private record Found(double seconds, long greatest, long pulls, long overloads, List<Long> bins) {
        void requireSame(Found other) {
            if (greatest != other.greatest
                    || pulls != other.pulls
                    || overloads != other.overloads
                    || !bins.equals(other.bins)) {
                throw new IllegalStateException("they find different things: " + this + ", " + other);
            }
        }
    }

    private NumbaBench(CodedTrace trace, Process python) {
        this.trace = trace;
        this.python = python;
        answers = new BufferedReader(new InputStreamReader(python.getInputStream(), StandardCharsets.UTF_8));
        questions = new BufferedWriter(new OutputStreamWriter(python.getOutputStream(), StandardCharsets.UTF_8));
    }

    /** No arguments. {@code -Dtautlog.python}: with numba; {@code -Dtautlog.rounds}, {@code -Dtautlog.samples}. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (!hasNumba()) {
            System.out.println("Skipped: " + PYTHON + " has no numba (Debian: python3-numba).");
            return;
        }
        Path raw = Files.createTempFile("trace", ".int32");
        try {
            CodedTrace trace = make(raw);
            Process python = new ProcessBuilder(PYTHON, CHAIN.toString(), raw.toString(), String.valueOf(split(trace)))
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            new NumbaBench(trace, python).run();
        } finally {
            Files.delete(raw);
        }
    }

    private static boolean hasNumba() throws InterruptedException {
        try {
            Process asked = new ProcessBuilder(PYTHON, "-c", "import numba")
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return asked.waitFor(1, TimeUnit.MINUTES) && asked.exitValue() == 0;
        } catch (IOException e) {
            return false; // no such program
        }
    }

    /** The trace, coded, and written plainly into {@code raw}. */
    private static CodedTrace make(Path raw) throws IOException {
        int[] counts = Traces.afternoon(1, SAMPLES);
        ByteBuffer bytes = ByteBuffer.allocateDirect(CHUNK * Integer.BYTES).order(ByteOrder.nativeOrder());
        try (FileChannel file = FileChannel.open(raw, StandardOpenOption.WRITE)) {
            for (int at = 0; at < counts.length; at += CHUNK) {
                bytes.clear();
                bytes.asIntBuffer().put(counts, at, Math.min(CHUNK, counts.length - at));
                bytes.limit(Math.min(CHUNK, counts.length - at) * Integer.BYTES);
                while (bytes.hasRemaining()) {
                    file.write(bytes);
                }
            }
        }
        return CodedTrace.of(counts);
    }

    /** Where two threads part the trace. */
    private static int split(CodedTrace trace) {
        return trace.blocks() / 2 * CodedTrace.BLOCK_SAMPLES;
    }

    private void run() throws IOException, InterruptedException {
        String ready = answers.readLine();
        if (!"ready".equals(ready)) {
            throw new IOException("the script said " + ready);
        }
        for (int threads = 1; threads <= 2; threads++) {
            List<Found> tool = new ArrayList<>();
            List<Found> alike = new ArrayList<>();
            List<Found> numba = new ArrayList<>();
            for (int round = -WARMING; round < ROUNDS; round++) {
                Found ours = tool(threads, WholeChain.Of.ALL);
                Found theirs = numba(threads);
                Found same = tool(threads, WholeChain.Of.ALIKE);
                ours.requireSame(theirs);
                same.requireSame(theirs);
                if (round >= 0) {
                    tool.add(ours);
                    alike.add(same);
                    numba.add(theirs);
                }
            }
            tell(threads, "the tool's whole chain", tool, numba);
            tell(threads, "of it pulls, rainflow, overloads, shocks", alike, numba);
        }
        questions.close();
        python.waitFor();
    }

    private Found numba(int threads) throws IOException {
        questions.write(threads + "\n");
        questions.flush();
        String line = answers.readLine();
        if (line == null) {
            throw new IOException("the script ended");
        }
        String[] words = line.split(" ");
        List<Long> bins = new ArrayList<>();
        for (int i = 6; i < words.length; i++) {
            bins.add(Long.parseLong(words[i]));
        }
        return new Found(
                Double.parseDouble(words[0]),
                Long.parseLong(words[1]),
                Long.parseLong(words[2]),
                Long.parseLong(words[3]),
                bins);
    }

    private Found tool(int threads, WholeChain.Of detectors) {
        long start = System.nanoTime();
        int half = threads == 1 ? trace.blocks() : trace.blocks() / 2;
        CompletableFuture<WholeChain> second =
                CompletableFuture.supplyAsync(() -> chain(detectors, half, trace.blocks())); // nothing, on one thread
        WholeChain first = chain(detectors, 0, half);
        return found((System.nanoTime() - start) / 1e9, first, second);
    }

    private static Found found(double untilFirst, WholeChain first, CompletableFuture<WholeChain> second) {
        long start = System.nanoTime();
        WholeChain other = second.join();
        double seconds = untilFirst + (System.nanoTime() - start) / 1e9;
        List<Long> bins = new ArrayList<>();
        for (int i = 0; i < first.bins.length; i++) {
            bins.add(first.bins[i] + other.bins[i]);
        }
        return new Found(
                seconds,
                Math.max(first.greatest, other.greatest),
                first.sink.found("pull") + other.sink.found("pull"),
                first.sink.found("overload") + other.sink.found("overload"),
                bins);
    }

    private WholeChain chain(WholeChain.Of detectors, int from, int to) {
        WholeChain chain = detectors.chain();
        trace.read(from, to, chain);
        chain.end();
        return chain;
    }

    private void tell(int threads, String what, List<Found> tool, List<Found> numba) {
        List<Double> ratios = new ArrayList<>();
        for (int i = 0; i < tool.size(); i++) {
            ratios.add(numba.get(i).seconds / tool.get(i).seconds);
        }
        ratios.sort(null);
        System.out.printf(
                Locale.ROOT,
                "%d thread(s), million samples a second, best of %d: %s %.0f, numba %.0f, ratio %.2f;"
                        + " ratios round by round %.2f to %.2f, median %.2f (%d pulls, %d overloads; %.3f bytes a sample)%n",
                threads,
                ROUNDS,
                what,
                SAMPLES / best(tool) / 1e6,
                SAMPLES / best(numba) / 1e6,
                best(numba) / best(tool),
                ratios.get(0),
                ratios.get(ratios.size() - 1),
                ratios.get(ratios.size() / 2),
                tool.get(0).pulls,
                tool.get(0).overloads,
                trace.bytes() / (double) SAMPLES);
    }

    private static double best(List<Found> found) {
        return found.stream().mapToDouble(Found::seconds).min().orElseThrow();
    }
}
