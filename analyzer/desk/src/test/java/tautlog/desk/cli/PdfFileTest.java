package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** {@code report --pdf}. */
class PdfFileTest {
    @TempDir
    static Path folder;

    private static Path recording;

    @BeforeAll
    static void recordsADay() throws Exception {
        recording = SampleDay.write(folder);
    }

    private static byte[] print(String name, Object... more) throws Exception {
        Path file = folder.resolve(name);
        Object[] arguments = new Object[6 + more.length];
        System.arraycopy(new Object[] {"report", recording, "--zone", "UTC", "--pdf", file}, 0, arguments, 0, 6);
        System.arraycopy(more, 0, arguments, 6, more.length);
        Desk run = Desk.run(arguments);
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        return Files.readAllBytes(file);
    }

    @Test
    void holdsTheReportWithItsBannerOnEverySheet() throws Exception {
        try (PDDocument pdf = Loader.loadPDF(print("day.pdf", "--hookup", "round-the-corner"))) {
            assertTrue(pdf.getNumberOfPages() > 3);
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                String text = stripper.getText(pdf).replaceAll("\\s+", " ");
                assertTrue(text.contains("WHAT IF: not what was in force on the day."), text);
                assertTrue(text.contains("upper-landing_2026-05-04.tautlog Last link "), text);
            }
        }
    }

    @Test
    void isTheSameFileAtTheSameStatedTime() throws Exception {
        byte[] first = print("1.pdf", "--created", "2026-05-05T06:00:00Z");

        assertArrayEquals(first, print("2.pdf", "--created", "2026-05-05T06:00:00Z"));
        assertFalse(java.util.Arrays.equals(first, print("3.pdf", "--created", "2026-05-05T06:00:01Z")));
    }

    @Test
    void refusesToOverwriteARecordingOrToFillATerminal() {
        Desk refused = Desk.run("report", recording, "--pdf", recording);
        assertEquals(2, refused.code());
        assertEquals("", refused.out());
        assertEquals(2, Desk.run("report", recording, "--pdf", "-").code());
        assertEquals(
                2,
                Desk.run("report", recording, "--pdf", folder.resolve("x.pdf"), "--created", "noon")
                        .code());
    }
}
