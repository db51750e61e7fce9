package tautlog.logger.notes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tautlog.logger.notes.BuilderPage.number;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Every table of the builders' pages that follows from a formula says what the formula says, to its last digit. */
class ComputedTablesTest {
    /** What a row must say, worked out from its first cells; each row is compared whole. */
    private static void assertRows(
            List<List<String>> table, int leastRows, Function<List<String>, List<String>> expected) {
        List<List<String>> rows = table.subList(1, table.size());
        assertTrue(rows.size() >= leastRows, "rows: " + rows.size());
        for (List<String> row : rows) {
            assertEquals(expected.apply(row), row);
        }
    }

    private static String decimals(int digits, double value) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }

    /** Part of the peak missed at worst with {@code samples} in a half sine. */
    private static double missed(double samples) {
        return 1 - Math.cos(Math.PI / (2 * samples));
    }

    /** The last two columns of a resource's rows: the value by the text before it. */
    private static Map<String, Double> resource(String name, int value) throws IOException {
        try (InputStream in =
                Objects.requireNonNull(ComputedTablesTest.class.getResourceAsStream("/notes/" + name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.US_ASCII)
                    .lines()
                    .skip(1)
                    .map(line -> line.split(","))
                    .collect(Collectors.toMap(
                            cells -> String.join(" ", Arrays.copyOf(cells, value)),
                            cells -> Double.parseDouble(cells[value])));
        }
    }

    /** Against numbers worked out elsewhere: half_sine_missed_peak.csv, 1 − cos(π/(2 f τ)) to eight digits. */
    @Test
    void missedPeakBySamplesInThePulse() throws IOException {
        Map<String, Double> published = resource("half_sine_missed_peak.csv", 1);
        List<List<String>> table = BuilderPage.read("rate.md").table("samples in the pulse, f · τ");
        assertRows(table, 10, row -> {
            double loss = Objects.requireNonNull(published.get(row.get(0)), row.get(0));
            assertEquals(loss, missed(number(row.get(0))), 5e-9);
            return List.of(row.get(0), decimals(3, 100 * loss));
        });
    }

    @Test
    void missedPeakByPulseAndRate() throws IOException {
        List<List<String>> table = BuilderPage.read("rate.md").table("pulse, ms");
        List<String> rates = table.get(0).subList(1, table.get(0).size());
        assertRows(table, 6, row -> {
            double seconds = number(row.get(0)) / 1_000;
            List<String> expected = new java.util.ArrayList<>(List.of(row.get(0)));
            for (String rate : rates) {
                double samples = number(rate.replace("Hz", "")) * seconds;
                expected.add(samples < 2 - 1e-9 ? "–" : decimals(2, 100 * missed(samples)));
            }
            return expected;
        });
    }

    /** The rates that the page recommends in words: 4.95 and 11.1 samples for 5 % and 1 %. */
    @Test
    void samplesNeededForFiveAndOnePercent() {
        assertEquals(0.05, missed(4.95), 0.0001);
        assertTrue(missed(11.1) <= 0.01 && missed(11.0) > 0.01);
    }

    /** Frames of wire.md: 6 bytes around the payload, a length byte and a zero; stuffing adds no more to frames this short. */
    @Test
    void bytesOnTheLine() throws IOException {
        int hello = 33 + 8;
        int health = 12 + 8;
        int input = 7 + 8;
        int shafts = 10 * (9 + 8) + 3 * 100;
        assertRows(BuilderPage.read("rate.md").table("rate, Hz"), 7, row -> {
            double rate = number(row.get(0));
            double n = number(row.get(1));
            double bytes = Math.ceil(rate / n) * (10 + 3 * n + 8) + hello + health + input + shafts;
            assertTrue(n <= 78);
            return List.of(
                    row.get(0),
                    row.get(1),
                    decimals(1, 1_000 * n / rate),
                    decimals(0, bytes),
                    decimals(1, 100 * bytes / 11_520));
        });
    }

    /** Statics, and the greater deviation at the two ends of a's interval. */
    @Test
    void cellAtASheave() throws IOException {
        assertRows(BuilderPage.read("cell.md").table("a, degrees"), 6, row -> {
            double a = number(row.get(0));
            double off = Math.max(deviation(a, Math.max(0, a - 5)), deviation(a, a + 5));
            return List.of(row.get(0), decimals(3, 2 * cosOfHalf(a)), decimals(1, 100 * off) + " %");
        });
    }

    private static double cosOfHalf(double degrees) {
        return Math.cos(Math.toRadians(degrees / 2));
    }

    private static double deviation(double angle, double trueAngle) {
        return Math.abs(cosOfHalf(angle) / cosOfHalf(trueAngle) - 1);
    }

    /** Against figures worked out elsewhere: shunt.csv, R/(4 Rs + 2 R) of an equal-arm bridge; 87,325 Ω is exactly 1 mV/V. */
    @Test
    void shuntResistor() throws IOException {
        Map<String, Double> published = resource("shunt.csv", 2);
        assertRows(BuilderPage.read("bridge.md").table("R, Ω"), 6, row -> {
            double r = number(row.get(0));
            double shunt = number(row.get(1));
            double exact = 1_000 * r / (4 * shunt + 2 * r);
            assertEquals(published.get(decimals(0, r) + " " + decimals(0, shunt)), exact, 5e-7);
            return List.of(row.get(0), row.get(1), decimals(6, exact));
        });
    }

    /** A worked example from outside: 30.555 kN. */
    @Test
    void bridgeReading() throws IOException {
        assertRows(BuilderPage.read("bridge.md").table("capacity, kN"), 1, row -> {
            double f = (number(row.get(2)) - number(row.get(3))) / number(row.get(1)) * number(row.get(0));
            assertEquals(30.555, f, 0.0005);
            return List.of(row.get(0), row.get(1), row.get(2), row.get(3), decimals(3, f));
        });
    }

    /** 2²⁴ codes and 10 rms are 20.6781 effective and 17.9556 noise-free bits: worked out elsewhere. */
    @Test
    void noiseFreeBits() throws IOException {
        double newtonsPerCount = 60_000 / 2_147_484.0;
        assertEquals(20.6781, bits(10), 5e-5);
        assertEquals(17.9556, bits(66), 5e-5);
        assertRows(BuilderPage.read("bridge.md").table("rms, counts"), 5, row -> {
            double rms = number(row.get(0));
            return List.of(
                    row.get(0),
                    decimals(2, bits(rms)),
                    decimals(2, bits(6.6 * rms)),
                    decimals(1, 6.6 * rms * newtonsPerCount));
        });
    }

    private static double bits(double counts) {
        return Math.log((1 << 24) / counts) / Math.log(2);
    }

    /** cardan_nonuniformity.csv, worked out elsewhere, says 531.796 to 548.330 rpm at 10° and 467.654 to 623.538 at 30°. */
    @Test
    void joints() throws IOException {
        assertEquals(531.796, 540 * Math.cos(Math.toRadians(10)), 5e-4);
        assertEquals(623.538, 540 / Math.cos(Math.toRadians(30)), 5e-4);
        assertRows(BuilderPage.read("shaft.md").table("joint angle, degrees"), 6, row -> {
            double cos = Math.cos(Math.toRadians(number(row.get(0))));
            return List.of(row.get(0), decimals(1, 540 * cos), decimals(1, 540 / cos));
        });
    }

    @Test
    void pulsesPerTurn() throws IOException {
        assertRows(BuilderPage.read("shaft.md").table("pulses per turn"), 5, row -> {
            double pulses = number(row.get(0));
            return List.of(
                    row.get(0),
                    decimals(1, 540 * pulses / 60),
                    decimals(1, 1_000 * pulses / 60),
                    decimals(1, 60 / pulses));
        });
    }

    @Test
    void holdUpCapacitor() throws IOException {
        List<List<String>> table = BuilderPage.read("supply.md").table("load, W");
        List<String> times = table.get(0).subList(1, table.get(0).size());
        assertRows(table, 3, row -> {
            List<String> expected = new java.util.ArrayList<>(List.of(row.get(0)));
            for (String time : times) {
                double joules = number(row.get(0)) * number(time.replace("s", ""));
                expected.add(decimals(3, 2 * joules / (12 * 12 - 7 * 7)));
            }
            return expected;
        });
    }

    /** Ten bits a character; the least usual baud that leaves a third free. */
    @Test
    void baudOfALineOfText() throws IOException {
        int[] usual = {2_400, 4_800, 9_600, 19_200, 38_400, 57_600, 115_200};
        assertRows(BuilderPage.read("own.md").table("bytes a line"), 5, row -> {
            double bits = 10 * number(row.get(0)) * number(row.get(1));
            int least = Arrays.stream(usual)
                    .filter(baud -> bits <= baud * 2 / 3.0)
                    .findFirst()
                    .orElseThrow();
            return List.of(row.get(0), row.get(1), decimals(0, bits), String.valueOf(least));
        });
    }
}
