package tautlog.desk.exporting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

class ExportTest {
    @TempDir
    Path folder;

    @Test
    void writesEverySampleWithNumberTickTimeCountsAndShare() throws IOException {
        Path recording = SampleDay.write(folder);
        Path csv = folder.resolve("samples.csv");

        Desk run = Desk.run("export", recording, "--csv", csv);

        List<String> rows = Files.readAllLines(csv);
        assertEquals(0, run.code(), run.err());
        assertEquals(
                "outing,number,tick,utc,counts,tension_n,hookup,limit_n,share,flags,limit_is_at_most,assumed",
                rows.get(0));
        // 60 s at 500 Hz less a gap of 200, and one sample more for the spike
        assertEquals(30_001 - 200, rows.size() - 1);
        String[] afterGap = rows.get(1 + 14_500).split(",", -1);
        assertEquals("14700", afterGap[1]);
        assertEquals("29400000", afterGap[2]);
        assertEquals("2026-05-04T07:00:29.400000Z", afterGap[3]);
        assertEquals(Double.parseDouble(afterGap[4]), Double.parseDouble(afterGap[5]));
        assertEquals("straight", afterGap[6]);
        assertEquals(Double.parseDouble(afterGap[5]) / SampleDay.LIMIT_NEWTONS, Double.parseDouble(afterGap[8]), 1e-9);
        assertTrue(rows.get(rows.size() - 1).contains("round-the-corner"));
    }

    @Test
    void writesOneRowASecond() throws IOException {
        Path recording = SampleDay.write(folder);

        List<String> rows = Desk.run("export", recording, "--csv", "-", "--seconds")
                .out()
                .lines()
                .toList();

        String[] snap = rows.get(1 + 15).split(",", -1);
        String[] gap = rows.get(1 + 29).split(",", -1);
        assertEquals(61, rows.size() - 1);
        assertEquals(17_000, Double.parseDouble(snap[6]), 8);
        assertEquals("over-limit", snap[11]);
        assertEquals("gap", gap[11]);
        assertEquals("300", gap[7]);
    }
}
