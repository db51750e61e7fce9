package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.pty.PseudoTerminal;

/**
 * The main job from outside: an independent instrument writes to a pseudo-terminal, {@code tautlogd run} records it,
 * {@code tautlog report} reads it back. What is expected is read off the drawing ({@link ScriptedTrace}), never computed by
 * the programs' own code. Tolerances: times ±1 sample (2 ms), forces ±1 count (0.01 N).
 */
class FirstPullIT {
    private static final double COUNT_N = 0.0101;
    private static final Instant START = Instant.parse("2026-05-04T07:00:00Z");
    private static final Path ROOT = Path.of(System.getProperty("tautlog.root"));

    private static final ScriptedTrace TRACE = new ScriptedTrace();
    private static final IndependentInstrument INSTRUMENT = new IndependentInstrument();

    @TempDir
    static Path folder;

    private static boolean[] arrived;
    private static JsonObject report;

    @BeforeAll
    @SuppressWarnings("try") // closed in the middle: that is the hang-up
    static void recordAndReport() throws Exception {
        arrived = INSTRUMENT.send(TRACE.counts, TRACE.rpm, TRACE.fates);
        Files.writeString(folder.resolve("rig.toml"), RIG);
        Files.writeString(folder.resolve("logger.toml"), LOGGER);
        Process logger;
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            terminal.linkAt(folder.resolve("port"));
            logger = start("logger/target/tautlogd.jar", "run", "--config", "logger.toml", "--until-closed");
            assertTrue(terminal.waitForReader(Duration.ofSeconds(20)), () -> errors("tautlogd"));
            assertTrue(terminal.write(INSTRUMENT.bytes(), 0, INSTRUMENT.bytes().length));
            assertTrue(terminal.waitUntilTaken(Duration.ofSeconds(20)));
        }
        assertTrue(logger.waitFor(30, TimeUnit.SECONDS), "tautlogd ends when the port is closed");
        assertEquals(0, logger.exitValue(), () -> errors("tautlogd"));
        report = JsonParser.parseString(desk("report", "recordings", "--json")).getAsJsonObject();
    }

    @Test
    void everyCountIsStoredBitForBit() throws Exception {
        List<String> lines = desk("export", "recordings", "--csv", "-").lines().toList();
        List<String> header = Arrays.asList(lines.get(0).split(","));
        int number = header.indexOf("number");
        int counts = header.indexOf("counts");
        List<String> expected = new ArrayList<>();
        for (int k = 0; k < TRACE.counts.length; k++) {
            if (arrived[k]) {
                expected.add((IndependentInstrument.FIRST_NUMBER + k) + ":" + TRACE.counts[k]);
            }
        }
        List<String> stored = lines.stream()
                .skip(1)
                .map(line -> line.split(","))
                .map(cells -> cells[number] + ":" + cells[counts])
                .toList();
        assertEquals(expected, stored);
    }

    @Test
    void everyLostOrRejectedFrameIsCounted() {
        JsonObject trust = report.getAsJsonObject("trust");
        int rejected = INSTRUMENT.spoiledFrames + INSTRUMENT.cutFrames + INSTRUMENT.garbagePieces;
        assertEquals(rejected, trust.get("rejected_frames").getAsInt());
        int byKind = trust.getAsJsonObject("rejected").entrySet().stream()
                .mapToInt(e -> e.getValue().getAsInt())
                .sum();
        assertEquals(rejected, byKind);
        int lost = INSTRUMENT.lostFrames + INSTRUMENT.spoiledFrames + INSTRUMENT.cutFrames;
        assertEquals(lost, trust.get("lost_frames").getAsInt(), "lost frames include the rejected ones");
        assertEquals(3, trust.get("lost_by_instrument").getAsInt());
        // a jump each for: the overload's gap, the pull's gap, the spoiled frame, the cut frame, the long gap
        assertEquals(5, trust.get("gaps").getAsInt());
        assertEquals((50 + 300 + 25 + 25 + 1_000) / 500.0, trust.get("gap_s").getAsDouble(), 1e-9);
        assertTrue(trust.get("chain_intact").getAsBoolean());
        assertEquals(64, trust.get("last_link").getAsString().length());
    }

    @Test
    void findsThePulls() {
        JsonArray pulls = list("pulls", 5);
        int fallen = TRACE.lastAtOrAbove(13_010, 1_500);
        pull(pulls.get(0), 2_502, fallen, 1, 1);
        assertTrue(pulls.get(0).getAsJsonObject().get("has_gap").getAsBoolean());
        pull(pulls.get(1), TRACE.firstAtOrAbove(17_500, 1_500), TRACE.lastAtOrAbove(30_501, 1_500), 0, 0);
        pull(pulls.get(2), TRACE.firstAtOrAbove(35_000, 1_500), 37_499, 0, 0);
        assertTrue(pulls.get(2).getAsJsonObject().get("cut_by_gap").getAsBoolean());
        pull(pulls.get(3), 37_800, TRACE.lastAtOrAbove(40_501, 1_500), 0, 0);
        pull(pulls.get(4), TRACE.firstAtOrAbove(47_500, 1_500), ScriptedTrace.SAMPLES - 1, 1, 0);
        assertTrue(pulls.get(4).getAsJsonObject().get("cut_by_end").getAsBoolean());
        boolean[] held = {false, false, true, true, false};
        for (int i = 0; i < held.length; i++) {
            assertEquals(held[i], pulls.get(i).getAsJsonObject().get("held").getAsBoolean(), "pull " + i);
        }
    }

    @Test
    void findsTheOverloads() {
        JsonArray overloads = list("overloads", 2);
        JsonObject first = overloads.get(0).getAsJsonObject();
        int from = TRACE.firstAtOrAbove(9_000, 12_000);
        int to = TRACE.lastAtOrAbove(12_001, 12_000);
        from += TRACE.counts[from] == 1_200_000 ? 1 : 0; // above, not at, the limit
        to -= TRACE.counts[to] == 1_200_000 ? 1 : 0;
        span(first, from, to);
        assertEquals((to - from + 1 - 50) / 500.0, first.get("above_s").getAsDouble(), 0.0021);
        assertEquals(14_000.03, first.get("peak_n").getAsDouble(), COUNT_N);
        assertEquals(12_000, first.get("limit_n").getAsDouble(), 1e-6);
        assertTrue(first.get("has_gap").getAsBoolean());
        assertEquals("past-wll", first.get("band").getAsString());
        assertEquals("choker", first.get("governing").getAsString());
        assertEquals(false, first.get("at_least").getAsBoolean());

        JsonObject second = overloads.get(1).getAsJsonObject();
        assertEquals(25_000, second.get("peak_n").getAsDouble(), COUNT_N);
        assertEquals("past-proof", second.get("band").getAsString());
        assertEquals(true, second.get("at_least").getAsBoolean());
        JsonObject choker = item(second, "choker");
        assertEquals(12_000, choker.get("allowed_n").getAsDouble(), 1e-6);
        assertEquals(24_000, choker.get("proof_n").getAsDouble(), 1e-6);
        assertEquals(48_000, choker.get("breaking_n").getAsDouble(), 1e-6);
        assertEquals(25_000 / 12_000.0, choker.get("share").getAsDouble(), 1e-5);
        JsonObject rope = item(second, "rope");
        assertEquals(32_000, rope.get("allowed_n").getAsDouble(), 1e-6);
        assertTrue(rope.get("proof_n").isJsonNull(), "no proof load is published for the winch's line");
    }

    @Test
    void findsTheShock() {
        JsonObject shock = list("shocks", 1).get(0).getAsJsonObject();
        at(2_510, shock.get("at"));
        assertEquals(2_501 / 500.0, shock.get("slack_s").getAsDouble(), 0.0021);
        assertEquals(10 / 500.0, shock.get("rise_s").getAsDouble(), 0.0021);
        assertEquals(TRACE.counts[2_510] / 100.0, shock.get("peak_n").getAsDouble(), COUNT_N);
        assertEquals(4_000, shock.get("settled_n").getAsDouble(), 0.011);
        assertEquals(2.5, shock.get("factor").getAsDouble(), 1e-4);
        assertEquals(
                10_000 / Math.cos(Math.PI / 40),
                shock.get("peak_if_half_sine_n").getAsDouble(),
                0.05);
        assertTrue(shock.get("resolved").getAsBoolean());
    }

    @Test
    void findsTheJolt() {
        JsonObject jolt = list("jolts", 1).get(0).getAsJsonObject();
        int least = Arrays.stream(TRACE.counts, 7_404, 7_504).min().getAsInt();
        int start = 7_503;
        while (TRACE.counts[start] != least) {
            start--;
        }
        at(start, jolt.get("start"));
        at(7_504, jolt.get("at"));
        assertEquals(TRACE.counts[7_504] / 100.0, jolt.get("peak_n").getAsDouble(), COUNT_N);
        assertEquals((TRACE.counts[7_504] - least) / 100.0, jolt.get("rise_n").getAsDouble(), COUNT_N);
        assertEquals((7_504 - start) / 500.0, jolt.get("rise_s").getAsDouble(), 0.0021);
    }

    @Test
    void findsTheDrop() {
        JsonObject drop = list("drops", 1).get(0).getAsJsonObject();
        int greatest = TRACE.greatest(12_929, 13_003);
        int start = 13_003;
        while (TRACE.counts[start] != greatest) {
            start--;
        }
        at(start, drop.get("start"));
        assertEquals(greatest / 100.0, drop.get("before_n").getAsDouble(), COUNT_N);
        assertEquals(-0.03, drop.get("after_n").getAsDouble(), COUNT_N);
        assertEquals((13_004 - start) / 500.0, drop.get("fall_s").getAsDouble(), 0.0021);
        assertTrue(drop.get("stays_slack").getAsBoolean());
        assertEquals("ran-up", drop.get("shaft").getAsString());
        assertTrue(drop.get("clutch").isJsonNull(), "the instrument does not tell");
        assertTrue(drop.get("brake").isJsonNull(), "the instrument does not tell");
    }

    @Test
    void findsTheStall() {
        // 300 rpm from 45.05 s: at 45.1 s one or two of six pulse intervals are long (about 430 rpm), at 45.2 s four
        // (about
        // 345 rpm, below 0.7 * 540 = 378); back at 540 rpm from 46.05 s: at 46.2 s all six are short
        JsonObject stall = list("stalls", 1).get(0).getAsJsonObject();
        at(22_600, stall.get("start"));
        at(23_100, stall.get("end"));
        assertEquals("recovered", stall.get("ended").getAsString());
        assertEquals(540, stall.get("before_rpm").getAsDouble(), 0.1);
        assertEquals(300, stall.get("least_rpm").getAsDouble(), 0.1);
        assertEquals(5_000, stall.get("tension_n").getAsDouble(), 0.04);
    }

    @Test
    void namesTheTroubleOfTheSensor() {
        JsonArray trouble = report.getAsJsonArray("trouble");
        JsonObject gap = kind(trouble, "gap");
        at(44_999, gap.get("start"));
        at(46_000, gap.get("end"));
        JsonObject endStop = kind(trouble, "end-stop");
        int first = 49_000;
        while (TRACE.counts[first] < IndependentInstrument.FULL_SCALE) {
            first++;
        }
        at(first, endStop.get("start"));
        assertEquals(2, trouble.size(), trouble::toString);
        long stopped = Arrays.stream(TRACE.counts)
                .filter(c -> c >= IndependentInstrument.FULL_SCALE)
                .count();
        assertEquals(
                stopped, report.getAsJsonObject("trust").get("end_stop_samples").getAsLong());
    }

    @Test
    void countsTheHours() {
        JsonObject hours = report.getAsJsonObject("hours");
        double pulls = 0;
        for (JsonElement pull : report.getAsJsonArray("pulls")) {
            pulls += pull.getAsJsonObject().get("duration_s").getAsDouble();
        }
        assertEquals(pulls / 3_600, hours.get("pull_h").getAsDouble(), 1e-9);
        // turning from 0 to 64 s and from 86 to 105 s; a start and a stop are each off by a reading and the second of
        // grace
        assertEquals((64 + 19) / 3_600.0, hours.get("shaft_h").getAsDouble(), 2.0 / 3_600);
        double held = 0;
        for (int i = 2; i <= 3; i++) {
            held += report.getAsJsonArray("pulls")
                    .get(i)
                    .getAsJsonObject()
                    .get("duration_s")
                    .getAsDouble();
        }
        assertEquals(held / 3_600, hours.get("held_h").getAsDouble(), 0.3 / 3_600);
        assertEquals((pulls - held) / 3_600, hours.get("winching_h").getAsDouble(), 0.3 / 3_600);
        assertTrue(hours.get("joint_h").isJsonNull(), "the rig describes no drum and no joint");
        assertBands(hours.getAsJsonObject("band_h"));
        String[] kinds = {"pulls", "overloads", "shocks", "jolts", "drops", "stalls"};
        for (String kind : kinds) {
            assertEquals(report.getAsJsonArray(kind).size(), hours.get(kind).getAsInt(), kind);
        }
    }

    private static void assertBands(JsonObject bands) {
        long[] samples = new long[5];
        int[][] pulls = {
            {2_502, TRACE.lastAtOrAbove(13_010, 1_500)},
            {TRACE.firstAtOrAbove(17_500, 1_500), TRACE.lastAtOrAbove(30_501, 1_500)},
            {TRACE.firstAtOrAbove(35_000, 1_500), TRACE.lastAtOrAbove(40_501, 1_500)},
            {TRACE.firstAtOrAbove(47_500, 1_500), ScriptedTrace.SAMPLES - 1}
        };
        for (int[] pull : pulls) {
            for (int k = pull[0]; k <= pull[1]; k++) {
                int quarter = (TRACE.counts[k] - 1) / 300_000; // 0.25 * 12 kN = 3,000 N = 300,000 counts
                samples[Math.min(quarter, 4)] += arrived[k] ? 1 : 0;
            }
        }
        String[] names = {"to_0.25", "to_0.5", "to_0.75", "to_1", "above_1"};
        for (int i = 0; i < names.length; i++) {
            assertEquals(samples[i] / 500.0 / 3_600, bands.get(names[i]).getAsDouble(), 0.0041 / 3_600, names[i]);
        }
    }

    @Test
    void saysWhatItReadAndUnderWhichHookup() {
        JsonObject recording = list("recordings", 1).get(0).getAsJsonObject();
        assertEquals("drawn-winch", recording.get("winch").getAsString());
        assertEquals(500.0, recording.get("rate_hz").getAsDouble());
        int sent = 0;
        for (boolean there : arrived) {
            sent += there ? 1 : 0;
        }
        assertEquals(sent, recording.get("samples").getAsInt());
        at(0, recording.get("start"));
        JsonObject hookup = list("hookups", 1).get(0).getAsJsonObject();
        assertEquals("straight", hookup.get("id").getAsString());
        assertEquals(true, hookup.get("assumed").getAsBoolean(), "nobody said which hookup is on");
    }

    @Test
    void verifyFindsTheRecordingWhole() throws Exception {
        desk("verify", "recordings");
    }

    private static void pull(JsonElement element, int from, int to, int overloads, int shocks) {
        JsonObject pull = element.getAsJsonObject();
        span(pull, from, to);
        assertEquals((to - from + 1) / 500.0, pull.get("duration_s").getAsDouble(), 0.0021);
        int peak = Integer.MIN_VALUE;
        long sum = 0;
        int samples = 0;
        for (int k = from; k <= to; k++) {
            if (arrived[k]) {
                peak = Math.max(peak, TRACE.counts[k]);
                sum += TRACE.counts[k];
                samples++;
            }
        }
        assertEquals(peak / 100.0, pull.get("peak_n").getAsDouble(), COUNT_N);
        assertEquals(sum / 100.0 / samples, pull.get("mean_n").getAsDouble(), 1.0);
        assertEquals(sum / 100.0 / 500, pull.get("impulse_ns").getAsDouble(), 25.0);
        assertEquals(peak / 1_200_000.0, pull.get("share").getAsDouble(), 1e-5);
        assertEquals(overloads, pull.get("overloads").getAsInt());
        assertEquals(shocks, pull.get("shocks").getAsInt());
    }

    private static void span(JsonObject finding, int from, int to) {
        at(from, finding.get("start"));
        at(to, finding.get("end"));
    }

    private static void at(int sample, JsonElement time) {
        Instant expected = START.plusMillis(2L * sample);
        Duration off =
                Duration.between(expected, Instant.parse(time.getAsString())).abs();
        assertTrue(off.compareTo(Duration.ofMillis(2)) <= 0, () -> time + " instead of " + expected);
    }

    private static JsonArray list(String key, int size) {
        JsonArray array = report.getAsJsonArray(key);
        assertEquals(size, array.size(), () -> key + ": " + array);
        return array;
    }

    private static JsonObject item(JsonObject overload, String gear) {
        for (JsonElement item : overload.getAsJsonArray("items")) {
            if (item.getAsJsonObject().get("gear").getAsString().equals(gear)) {
                return item.getAsJsonObject();
            }
        }
        throw new AssertionError("no item " + gear + " in " + overload);
    }

    private static JsonObject kind(JsonArray trouble, String kind) {
        for (JsonElement item : trouble) {
            if (item.getAsJsonObject().get("kind").getAsString().equals(kind)) {
                return item.getAsJsonObject();
            }
        }
        throw new AssertionError("no " + kind + " in " + trouble);
    }

    private static String desk(String... arguments) throws IOException, InterruptedException {
        Process desk = start("analyzer/desk/target/tautlog.jar", arguments);
        assertTrue(desk.waitFor(60, TimeUnit.SECONDS));
        assertEquals(0, desk.exitValue(), () -> errors("tautlog"));
        return Files.readString(folder.resolve("tautlog.out"));
    }

    private static Process start(String jar, String... arguments) throws IOException {
        Path program = ROOT.resolve(jar);
        String name = program.getFileName().toString().replace(".jar", "");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", program.toString()));
        command.addAll(Arrays.asList(arguments));
        return new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(folder.resolve(name + ".out").toFile())
                .redirectError(folder.resolve(name + ".err").toFile())
                .start();
    }

    private static String errors(String name) {
        try {
            return Files.readString(folder.resolve(name + ".err"));
        } catch (IOException e) {
            return "no errors to show: " + e;
        }
    }

    private static final String RIG = """
            schema = 1
            units = "kN"
            [winch]
            name = "drawn-winch"
            rated_pull = "40 kN"
            [cell]
            at = "line"
            [shaft]
            sensor_at = "tractor"
            [[gear]]
            id = "choker"
            kind = "chain"
            wll = "16 kN"
            [[gear]]
            id = "rope"
            kind = "rope"
            wll = "40 kN"
            [[hookup]]
            id = "straight"
            default = true
            items = [ { gear = "rope" }, { gear = "choker", as = "choker", choke_angle_deg = 130 } ]
            """;

    private static final String LOGGER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            kind = "framed"
            port = "./port"
            baud = 115200
            clock = "device"
            start_utc = 2026-05-04T07:00:00Z
            [calibration]
            zero_counts = 0.0
            newtons_per_count = 0.01
            zero = "fixed"
            """;
}
