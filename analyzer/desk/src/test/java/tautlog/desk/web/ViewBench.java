package tautlog.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import tautlog.calibration.CellCalibration;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.notes.NoteBook;
import tautlog.desk.season.Offer;
import tautlog.desk.season.SeasonWatch;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;

/**
 * How fast the evening view answers over a made-up season at 500 samples a second. A program, no test: {@code DEVELOPERS.md}, Benchmarks.
 * Arguments: a folder for the season (made when it is empty), hours.
 */
public final class ViewBench {
    private static final int HERTZ = 500;
    private static final int FRAME = 50;
    private static final int HOURS_A_DAY = 8;
    private static final long FIRST_DAY_MICROS = SampleDay.START.getEpochSecond() * 1_000_000;

    private ViewBench() {}

    public static void main(String[] args) throws Exception {
        Path folder = Files.createDirectories(Path.of(args[0]));
        int days = Math.max(1, Integer.parseInt(args[1]) / HOURS_A_DAY);
        for (int day = 0; day < days; day++) {
            Path file = folder.resolve(String.format("season_%03d.tautlog", day));
            if (!Files.exists(file)) {
                write(file, day);
            }
        }
        say("season: " + days + " days of " + HOURS_A_DAY + " h, " + bytes(folder) / 1_000_000 + " MB");
        run(folder, "first time");
        run(folder, "again");
    }

    private static void run(Path folder, String which) throws Exception {
        long begun = System.nanoTime();
        try (SeasonWatch watch = new SeasonWatch(
                        folder, ZoneId.of("UTC"), Optional.empty(), Offer.NONE, Optional.of(folder.resolve("index")));
                WebServer server = new WebServer(
                        watch,
                        new NoteBook(folder),
                        Optional.empty(),
                        0,
                        Optional.empty(),
                        Throwable::printStackTrace)) {
            while (!watch.progress().isDone()) {
                Thread.sleep(20);
            }
            say(which + ": indexed after " + millis(begun) + " ms");
            HttpClient client = HttpClient.newHttpClient();
            String address = "http://127.0.0.1:" + server.port();
            long[] overview = new long[20];
            JsonObject season = new JsonObject();
            for (int i = 0; i < overview.length; i++) {
                long at = System.nanoTime();
                season = JsonParser.parseString(get(client, address + "/api/season"))
                        .getAsJsonObject();
                overview[i] = System.nanoTime() - at;
            }
            say("overview: " + spread(overview));
            zooms(client, address, season);
            System.gc();
            Runtime memory = Runtime.getRuntime();
            say("heap in use: " + (memory.totalMemory() - memory.freeMemory()) / 1_000_000 + " MB");
        }
    }

    private static void zooms(HttpClient client, String address, JsonObject season) throws Exception {
        JsonArray days = season.getAsJsonArray("days");
        long from = days.get(0).getAsJsonObject().get("from_us").getAsLong();
        long to = days.get(days.size() - 1).getAsJsonObject().get("to_us").getAsLong();
        String winch = days.get(0).getAsJsonObject().get("winch_id").getAsString();
        Random random = new Random(1);
        long[] took = new long[300];
        double slowestSpan = 0;
        long slowest = 0;
        for (int i = 0; i < took.length; i++) {
            JsonObject day = days.get(random.nextInt(days.size())).getAsJsonObject();
            double span = (to - from) * Math.pow(10, -8.5 * i / took.length);
            long begin = span > 4e10
                    ? from + (long) ((to - from - span) * random.nextDouble())
                    : day.get("from_us").getAsLong() + (long) (random.nextDouble() * HOURS_A_DAY * 3.6e9 * 0.9);
            long at = System.nanoTime();
            get(
                    client,
                    address + "/api/trace?winch=" + winch + "&columns=1200&from=" + begin + "&to="
                            + (begin + Math.max(1_000, (long) span)));
            took[i] = System.nanoTime() - at;
            if (i > 30 && took[i] > slowest) {
                slowest = took[i];
                slowestSpan = span;
            }
        }
        say("zooms: " + spread(Arrays.copyOfRange(took, 30, took.length)) + "; slowest over " + slowestSpan / 1e6
                + " s");
    }

    private static String get(HttpClient client, String address) throws Exception {
        HttpResponse<String> answer =
                client.send(HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IOException(address + ": " + answer.statusCode() + " " + answer.body());
        }
        return answer.body();
    }

    private static void write(Path file, int day) throws IOException {
        try (RecordingWriter writer = RecordingWriter.open(file, "upper-landing")) {
            OutingWriter outing = writer.begin(new OutingStart(
                    SampleDay.instrument(1_000 + day),
                    SampleDay.rigToml(),
                    CellCalibration.written(Calibration.of("0", "1")),
                    "view bench",
                    OutingStart.Source.INSTRUMENT));
            outing.clock(0, FIRST_DAY_MICROS + day * 86_400_000_000L);
            outing.hookup(0, "straight", HookupSource.MARK);
            samples(outing, new Random(day));
            outing.end();
            outing.commit();
        }
    }

    /** Pulls of 40 s with 60 s of slack between them, noise of ±8 counts. */
    private static void samples(OutingWriter outing, Random random) throws IOException {
        long frames = (long) HOURS_A_DAY * 3_600 * HERTZ / FRAME;
        int[] counts = new int[FRAME];
        double level = 100;
        double aim = 100;
        for (long f = 0; f < frames; f++) {
            if (f % 1_000 == 600) {
                aim = 3_000 + random.nextInt(9_000);
            } else if (f % 1_000 == 0) {
                aim = 100;
            }
            long noise = random.nextLong();
            for (int k = 0; k < FRAME; k++) {
                level += (aim - level) * 0.01;
                counts[k] = (int) level + (int) ((noise >>> (k % 16)) & 15) - 8;
            }
            outing.tension(f * FRAME, f * FRAME * 2_000, 0, counts, 0, FRAME);
            if (f % 100 == 99) {
                outing.commit();
            }
        }
    }

    private static long bytes(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.mapToLong(file -> file.toFile().length()).sum();
        }
    }

    private static String spread(long[] nanos) {
        long[] sorted = nanos.clone();
        Arrays.sort(sorted);
        return "half within " + sorted[sorted.length / 2] / 100_000 / 10.0 + " ms, all within "
                + sorted[sorted.length - 1] / 100_000 / 10.0 + " ms";
    }

    private static long millis(long since) {
        return (System.nanoTime() - since) / 1_000_000;
    }

    private static void say(String words) {
        System.out.println(words);
        System.out.flush();
    }
}
