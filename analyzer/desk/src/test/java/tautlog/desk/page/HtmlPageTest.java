package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

class HtmlPageTest {
    private static String html;
    private static String text;
    private static Document page;

    @BeforeAll
    static void reportsTheSampleDay(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("day.html");
        Path recording = SampleDay.write(folder);
        Desk run = Desk.run("report", recording, "--zone", "UTC", "--html", file);
        assertEquals(0, run.code(), run.err());
        text = run.out();
        html = Files.readString(file);
        page = parse(html);
    }

    private static Document parse(String markup) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        DocumentBuilder builder = factory.newDocumentBuilder();
        builder.setErrorHandler(null);
        return builder.parse(new InputSource(new StringReader(markup)));
    }

    private static List<Element> elements(String name) {
        NodeList nodes = page.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    @Test
    void referencesNothingOutsideItself() {
        for (Element element : elements("*")) {
            for (String attribute : List.of("src", "srcset", "data", "action", "poster", "xlink:href")) {
                assertFalse(element.hasAttribute(attribute), element.getTagName());
            }
            String href = element.getAttribute("href");
            assertTrue(href.isEmpty() || href.startsWith("#"), href);
        }
        for (String name : List.of("script", "link", "iframe", "img", "object", "form")) {
            assertEquals(List.of(), elements(name));
        }
        String style = elements("style").get(0).getTextContent();
        assertFalse(style.contains("url("));
        assertFalse(style.contains("@import"));
    }

    @Test
    void escapesWhatCameFromTheRecording() {
        assertEquals(List.of(), elements("beside"));
        assertTrue(page.getDocumentElement().getTextContent().contains("stump <beside> the trail & \uFFFD[31mred"));
    }

    @Test
    void givesEveryDrawingItsOwnDescriptionInWords() {
        Set<String> ids = new HashSet<>();
        for (Element svg : elements("svg")) {
            assertEquals("img", svg.getAttribute("role"));
            Element title = (Element) svg.getElementsByTagName("title").item(0);
            assertEquals(svg.getAttribute("aria-labelledby"), title.getAttribute("id"));
            assertTrue(ids.add(title.getAttribute("id")));
            assertTrue(title.getTextContent().contains("greatest tension"), title.getTextContent());
        }
        assertTrue(ids.size() >= 5, ids.toString());
    }

    @Test
    void hasHeadingsInOrderAndTableHeadsWithScope() {
        assertEquals(1, elements("h1").size());
        assertTrue(elements("h2").size() >= 8);
        for (Element head : elements("th")) {
            assertTrue(head.hasAttribute("scope"));
        }
        assertEquals(elements("table").size(), elements("caption").size());
    }

    @Test
    void saysTheSameAsTheText() {
        String words = page.getDocumentElement().getTextContent().replaceAll("[\\s\u00A0]+", " ");
        for (String paragraph : text.split("\n(?=[-!])")) {
            String sentence = paragraph.lines().findFirst().orElse("");
            if (sentence.startsWith("- 07:")) {
                String start = sentence.substring(2).replaceAll("[?]\\[.*", "").strip();
                assertTrue(words.contains(start), start);
            }
        }
    }

    @Test
    void carriesTheWhatIfBannerOnTopOfThePage(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("what-if.html");

        Desk.run("report", SampleDay.write(folder), "--hookup", "round-the-corner", "--html", file);

        assertTrue(Files.readString(file).contains("<p class=\"banner\" role=\"note\">WHAT IF"));
    }
}
