package tautlog.desk.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;

class PdfPageTest {
    private static final Instant CREATED = Instant.parse("2026-05-05T06:00:00Z");
    private static final Sheet SHEET = new Sheet(List.of("upper-landing.tautlog", "Last link 0123"), CREATED);

    private static Document document(String banner, List<Block> blocks) {
        return new Document("A page", List.of("about it"), banner, List.of(new Document.Section("First", blocks)));
    }

    private static PDDocument pdf(Document document) throws IOException {
        return Loader.loadPDF(PdfPage.render(document, SHEET));
    }

    private static String text(PDDocument pdf, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(pdf).replace('\u00A0', ' ');
    }

    private static List<Block> much() {
        return List.of(new Block.Bullets(
                Collections.nCopies(120, "07:00:15.0 Overload: 17.0 kN, 109 % of limit 15.7 kN (hookup straight).")));
    }

    @Test
    void keepsItsTextAsText() throws IOException {
        try (PDDocument pdf = pdf(document("", List.of(new Block.Paragraph("≥ 17 kN ± 2° – 3 µm · 4 m² − 1 “q” …"))))) {
            assertTrue(text(pdf, 1).contains("≥ 17 kN ± 2° – 3 µm · 4 m² − 1 “q” …"), text(pdf, 1));
        }
    }

    @Test
    void embedsEveryFont() throws IOException {
        try (PDDocument pdf = pdf(document("", much()))) {
            int fonts = 0;
            for (PDPage page : pdf.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertTrue(page.getResources().getFont(name).isEmbedded(), name.getName());
                    fonts++;
                }
            }
            assertTrue(fonts >= 2, "fonts: " + fonts);
        }
    }

    @Test
    void carriesHeadBannerAndNumberOnEverySheet() throws IOException {
        try (PDDocument pdf = pdf(document("WHAT IF: not the day.", much()))) {
            int pages = pdf.getNumberOfPages();
            assertTrue(pages >= 2, "pages: " + pages);
            for (int page = 1; page <= pages; page++) {
                String text = text(pdf, page);
                assertTrue(text.contains("upper-landing.tautlog"), text);
                assertTrue(text.contains("Last link 0123"), text);
                assertTrue(text.contains("WHAT IF: not the day."), text);
                assertTrue(text.contains("Page " + page + " of " + pages), text);
            }
        }
    }

    @Test
    void keepsALongBannerOnTheSheetAndClearOfTheText() throws IOException {
        String banner = "WHAT IF: BEGINS " + "not what was in force on the day. ".repeat(30) + "ENDS";
        try (PDDocument pdf = pdf(document(banner, much()))) {
            List<String> order = new ArrayList<>();
            List<Float> heights = new ArrayList<>();
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<org.apache.pdfbox.text.TextPosition> positions) {
                    order.add(text);
                    heights.add(positions.get(0).getYDirAdj());
                }
            };
            stripper.setStartPage(2);
            stripper.setEndPage(2);
            stripper.getText(pdf);
            int begins = indexOf(order, "BEGINS");
            int ends = indexOf(order, "ENDS");
            int body = indexOf(order, "Overload");
            assertTrue(heights.get(begins) > 20, "banner begins at " + heights.get(begins));
            assertTrue(heights.get(body) - heights.get(ends) > 10, heights.get(ends) + ", " + heights.get(body));
        }
    }

    private static int indexOf(List<String> lines, String word) {
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).contains(word)) {
                return i;
            }
        }
        throw new AssertionError(word + " in " + lines);
    }

    @Test
    void givesTheSameBytesAgainAndOthersAtAnotherTime() throws IOException {
        Document document = document("", much());

        byte[] first = PdfPage.render(document, SHEET);

        assertArrayEquals(first, PdfPage.render(document, SHEET));
        byte[] later = PdfPage.render(document, new Sheet(SHEET.head(), CREATED.plusSeconds(1)));
        assertFalse(java.util.Arrays.equals(first, later));
    }

    @Test
    void statesItsTitleLanguageAndTime() throws IOException {
        try (PDDocument pdf = pdf(document("", List.of()))) {
            assertEquals("A page", pdf.getDocumentInformation().getTitle());
            assertEquals("en", pdf.getDocumentCatalog().getLanguage());
            assertEquals(CREATED, pdf.getDocumentInformation().getCreationDate().toInstant());
        }
    }

    @Test
    void tagsHeadingsTableHeadsAndDrawings() throws IOException {
        Block table = new Block.Table("Loads", List.of(Block.Column.left("Gear")), List.of(List.of("choker")));
        Block drawing = new Block.Figure(
                "Trace",
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><title>greatest 17 kN</title>"
                        + "<path d=\"M0 0L9 9\" stroke=\"#000000\"/></svg>");
        try (PDDocument pdf = pdf(document("", List.of(table, drawing)))) {
            List<PDStructureElement> tags = new ArrayList<>();
            collect(pdf.getDocumentCatalog().getStructureTreeRoot(), tags);
            List<String> kinds =
                    tags.stream().map(PDStructureElement::getStructureType).toList();
            assertTrue(kinds.containsAll(List.of("H1", "H2", "Table", "TH", "TR", "Figure")), kinds.toString());
            assertTrue(tags.stream().anyMatch(tag -> "greatest 17 kN".equals(tag.getAlternateDescription())));
        }
    }

    private static void collect(PDStructureNode node, List<PDStructureElement> into) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                into.add(element);
                collect(element, into);
            }
        }
    }

    @Test
    void leavesNoHeadingAloneAtTheEndOfASheet() throws IOException {
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            blocks.add(new Block.Heading("Heading " + i));
            blocks.add(new Block.Paragraph("what stands under it. ".repeat(1 + i % 3 * 4)));
        }
        try (PDDocument pdf = pdf(document("", blocks))) {
            assertTrue(pdf.getNumberOfPages() >= 2);
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                List<String> lines = text(pdf, page)
                        .lines()
                        .filter(line -> line.startsWith("Heading ") || line.startsWith("what stands"))
                        .toList();
                assertFalse(lines.get(lines.size() - 1).startsWith("Heading "), lines.toString());
            }
        }
    }

    @Test
    void keepsAShortTableAndItsHeadingOnOneSheet() throws IOException {
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
            blocks.add(new Block.Paragraph("what stands between. ".repeat(3 + i * 5)));
            blocks.add(new Block.Heading("Heading " + i + ";"));
            blocks.add(new Block.Table(
                    "Table " + i + ";",
                    List.of(Block.Column.left("Gear")),
                    Collections.nCopies(6, List.of("row of " + i + ";"))));
        }
        try (PDDocument pdf = pdf(document("", blocks))) {
            assertTrue(pdf.getNumberOfPages() > 3);
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                String text = text(pdf, page);
                for (int i = 0; i < 14; i++) {
                    boolean heading = text.contains("Heading " + i + ";");
                    assertEquals(heading, text.contains("Table " + i + ";"), text);
                    assertEquals(heading ? 6 : 0, text.split("row of " + i + ";", -1).length - 1, text);
                }
            }
        }
    }

    @Test
    void repeatsTheHeadsOfALongTableAndSplitsNoRow() throws IOException {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            rows.add(List.of("row " + i + ";", "begins " + i + " and " + "goes on ".repeat(40) + "ends " + i + "."));
        }
        Block table = new Block.Table("Long", List.of(Block.Column.left("GEAR"), Block.Column.left("What")), rows);
        try (PDDocument pdf = pdf(document("", List.of(table)))) {
            assertTrue(pdf.getNumberOfPages() >= 3);
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                String text = text(pdf, page).replaceAll("\\s+", " ");
                assertTrue(text.contains("GEAR"), text);
                for (int i = 0; i < 60; i++) {
                    assertEquals(text.contains("begins " + i + " "), text.contains("ends " + i + "."), text);
                }
            }
        }
    }

    @Test
    void writesOutWhatItsFontsLackAndLetsNothingThroughAsMarkup() throws IOException {
        String hostile = "<script>x</script> &amp; \u001B[31m \u202Ekcart \u6728 \uD83D\uDE9C # é \u05D0";
        try (PDDocument pdf = pdf(document("", List.of(new Block.Paragraph(hostile))))) {
            String text = text(pdf, 1);
            assertTrue(text.contains("<script>x</script> &amp; \uFFFD[31m \uFFFDkcart [U+6728] [U+1F69C] # é"), text);
        }
    }
}
