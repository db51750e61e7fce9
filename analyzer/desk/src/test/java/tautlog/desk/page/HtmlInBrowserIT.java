package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;

/**
 * The page of the packaged program in a real browser without a network: what it loads, what it complains of, how it looks.
 * Pictures are left in {@code target/html-in-browser} for eyes.
 */
class HtmlInBrowserIT {
    private static final Path TARGET = Path.of(System.getProperty("tautlog.root"), "analyzer", "desk", "target");
    private static final Path PICTURES = TARGET.resolve("html-in-browser");
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G'};

    private static Path page;

    @BeforeAll
    static void writesThePageWithTheProgramsJar(@TempDir Path folder) throws Exception {
        boolean isThere = Files.isExecutable(Browser.PROGRAM);
        if ("1".equals(System.getenv("TAUTLOG_MANDATORY"))) {
            assertTrue(isThere, Browser.PROGRAM + " is missing and TAUTLOG_MANDATORY=1");
        }
        assumeTrue(isThere, "skipped: there is no " + Browser.PROGRAM + " to open the page with");
        Files.createDirectories(PICTURES);
        Path recording = SampleDay.writeLive(folder, SampleDay.Power.OFF_IN_ORDER);
        page = PICTURES.resolve("day.html");
        report(recording, "--zone", "UTC", "--html", page);
    }

    private static void report(Object... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                TARGET.resolve("tautlog.jar").toString(),
                "report"));
        Arrays.stream(arguments).map(String::valueOf).forEach(command::add);
        Path errors = PICTURES.resolve("tautlog.err");
        Process program = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(errors.toFile())
                .start();
        assertTrue(program.waitFor(60, TimeUnit.SECONDS), "tautlog report ends within a minute");
        assertEquals(0, program.exitValue(), Files.readString(errors));
        assertEquals("", Files.readString(errors));
    }

    @Test
    void loadsNothingAndComplainsOfNothing() throws Exception {
        Browser.Visit visit = Browser.visit(PICTURES, page);

        assertEquals(List.of(), visit.requests());
        assertEquals(List.of(), visit.console());
    }

    @Test
    void holdsEverySectionAndDrawingOfTheReport() throws Exception {
        String dom = Browser.visit(PICTURES, page).dom();

        for (String section : List.of("What needs action", "What happened", "Pulls", HappenedSection.EVERYTHING)) {
            assertTrue(dom.contains(">" + section + "</h2>"), section);
        }
        assertTrue(dom.contains("choker (past-proof, how sure is not known):"));
        assertTrue(dom.contains("class=\"gap\""), "the long gap is hatched");
        assertTrue(dom.split("<svg ", -1).length > 5, "drawings of the day and of moments");
    }

    /** The other checks would see it: a page that asks for a picture and writes an error to the console. */
    @Test
    void noticesAPageThatLoadsSomethingAndComplains() throws Exception {
        Path bad = PICTURES.resolve("bad.html");
        Files.writeString(
                bad,
                "<!DOCTYPE html><title>bad</title><img src=\"http://127.0.0.1:9/x.png\"><script>console.error('boo')"
                        + "</script>");

        Browser.Visit visit = Browser.visit(PICTURES, bad);

        assertEquals(List.of("http://127.0.0.1:9/x.png"), visit.requests());
        assertTrue(
                visit.console().stream().anyMatch(line -> line.contains("boo")),
                visit.console().toString());
    }

    @Test
    void looksLikeSomethingOnADeskAndOnATelephone() throws Exception {
        for (String size : List.of("1280,2400", "360,2400")) {
            Path picture = PICTURES.resolve("day-" + size.replace(',', 'x') + ".png");
            Files.deleteIfExists(picture);

            Browser.picture(PICTURES, page, size, picture);

            byte[] bytes = Files.readAllBytes(picture);
            assertTrue(Arrays.equals(PNG, Arrays.copyOf(bytes, PNG.length)), picture.toString());
            assertFalse(bytes.length < 20_000, picture + " is nearly empty");
        }
    }

    /** Nothing of a table that stacks may have to be scrolled sideways; the same table would else be too wide. */
    @Test
    void stacksLongTextsOnATelephone() throws Exception {
        assertTrue(onATelephone(Block.Narrow.STACKS).startsWith("wide 0, head \"Source: \""));
        assertTrue(onATelephone(Block.Narrow.SCROLLS).matches("wide [1-9]\\d+, head none"));
    }

    /** By how many pixels a table is wider than a frame of 360, and what stands before a cell. */
    private static String onATelephone(Block.Narrow narrow) throws Exception {
        Block.Table table = new Block.Table(
                "Discard criteria",
                List.of(Block.Column.left("Discard at"), Block.Column.left("Source"), Block.Column.right("Found")),
                List.of(List.of(
                        "a sentence about broken wires that is far too long for a telephone beside three others",
                        "29 CFR 1926.1413(a)(2)(ii)(A), in force",
                        "not entered")),
                narrow);
        Document.Section section = new Document.Section("Rope", List.of(table));
        String text = HtmlPage.render(new Document("Gear", List.of(), "", List.of(section)))
                .replaceFirst("<meta http-equiv[^>]*>", "");
        Path frame = PICTURES.resolve("frame-" + narrow + ".html");
        Files.writeString(
                frame,
                "<!DOCTYPE html><title>f</title><iframe width=360 height=900 srcdoc='"
                        + text.replace("&", "&amp;").replace("'", "&apos;")
                        + "'></iframe><script>onload = () => { const d = document.querySelector('iframe').contentDocument;"
                        + " const s = d.querySelector('.scroll'); document.title = 'wide ' + (s.scrollWidth - s.clientWidth)"
                        + " + ', head ' + getComputedStyle(d.querySelector('td'), '::before').content; };</script>");
        return Browser.visit(PICTURES, frame).dom().replaceFirst("(?s).*?<title>(.*?)</title>.*", "$1");
    }
}
