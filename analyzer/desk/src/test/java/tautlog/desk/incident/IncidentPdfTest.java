package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** Only the paper is read here. */
class IncidentPdfTest {
    private static final String AT = "2026-05-04T07:00:27Z";
    private static final String HOSTILE = "<script>alert(1)</script> ‮gpj.exe \\u001B[2J 木 ";

    private static List<String> pages;
    private static byte[] first;
    private static byte[] second;
    private static String html;

    @BeforeAll
    static void prints(@TempDir Path folder) throws Exception {
        String rig = SampleDay.rigToml()
                .replace("count = 6", "count = 6\nserial = \"" + HOSTILE + "\"\nfitted = 2025-11-01");
        Path recording = SampleDay.write(folder, "day.tautlog", 7, 0, rig, Cases.known());
        first = print(recording, folder.resolve("1.pdf"), folder.resolve("page.html"));
        second = print(recording, folder.resolve("2.pdf"), folder.resolve("again.html"));
        html = Files.readString(folder.resolve("page.html"));
        pages = text(first);
    }

    private static byte[] print(Path recording, Path pdf, Path html) throws IOException {
        Desk run = Desk.run(
                "incident",
                recording,
                "--at",
                AT,
                "--zone",
                "UTC",
                "--pdf",
                pdf,
                "--html",
                html,
                "--created",
                "2026-05-05");
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        return Files.readAllBytes(pdf);
    }

    private static List<String> text(byte[] file) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(file)) {
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(pdf).replace('\u00A0', ' '));
            }
        }
        return pages;
    }

    /** The answer behind a label of the box on the first page. */
    private static String answer(String label) {
        Matcher found = Pattern.compile(
                        label + ": (.*?)(?=What broke the limit:|By how much:|How sure:|What to do now:|What happened)")
                .matcher(pages.get(0).replaceAll("\\s+", " "));
        assertTrue(found.find(), label + " is not on the first page: " + pages.get(0));
        return found.group(1);
    }

    @Test
    void answersWhatBrokeTheLimit() {
        assertTrue(answer("What broke the limit").contains("choker (past-proof)"));
        assertTrue(answer("What broke the limit").contains("the limit of hookup straight, 15.7 kN"));
    }

    @Test
    void answersByHowMuch() {
        assertTrue(answer("By how much").contains("33.0 kN (32.0 to 34.1 with 95 %), 211 % (204 to 217) of limit"));
        assertTrue(answer("By how much")
                .contains("of the 15.7 kN it may carry (proof load 31.4 kN, breaking load 62.7 kN)"));
    }

    @Test
    void answersHowSure() {
        assertTrue(answer("How sure").contains("With 95 % the true greatest pull was between 32.0 and 34.1 kN"));
        assertTrue(answer("How sure").contains("Even its lower end is over the limit."));
    }

    @Test
    void answersWhatToDoNow() {
        assertTrue(answer("What to do now").contains("choker: Take it out of service"));
    }

    @Test
    void endsNoSheetWithAHeading() {
        Matcher head = Pattern.compile("<h[23][^>]*>([^<]*)</h").matcher(html);
        List<String> headings = new ArrayList<>();
        while (head.find()) {
            headings.add(head.group(1).replace("&#39;", "'"));
        }
        assertTrue(headings.size() > 12, headings.toString());
        for (String page : pages) {
            List<String> lines =
                    page.lines().filter(line -> !line.startsWith("Page ")).toList();
            assertFalse(headings.contains(lines.get(lines.size() - 1).strip()), page);
        }
    }

    @Test
    void splitsNoRowOfATable() {
        // the row's first cell and its last stand on one sheet
        assertTrue(
                pages.stream().anyMatch(page -> page.contains("past-proof") && page.contains("Loads at the greatest")));
    }

    @Test
    void hasEveryCharacterOfThePage() {
        String all = String.join("\n", pages);

        assertFalse(all.contains("#"), all);
        for (String character : List.of("≥", "–", "·", "°", "%", "[U+6728]")) {
            assertTrue(all.contains(character), character);
        }
    }

    @Test
    void carriesRecordingAndLastLinkOnEverySheet() {
        for (String page : pages) {
            assertTrue(page.contains("day.tautlog"), page);
            assertTrue(page.matches("(?s).*Last link [0-9a-f]{64}.*"), page);
        }
    }

    @Test
    void givesTheSameBytesAgain() {
        assertArrayEquals(first, second);
    }

    @Test
    void showsHostileNamesAsText() {
        assertTrue(html.contains("&lt;script&gt;alert(1)&lt;/script&gt; \uFFFDgpj.exe \uFFFD[2J 木"), html);
        assertFalse(html.contains("<script"));
        assertTrue(String.join(" ", pages).replaceAll("\\s+", "").contains("<script>alert(1)</script>\uFFFDgpj.exe"));
    }
}
