package tautlog.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SmallSeason;

/** A person with a browser and a season. Pictures are left in {@code target/view-in-browser} for eyes. */
class ViewInBrowserIT {
    private static Path folder;
    private static RunningView view;
    private static ViewPage page;

    @BeforeAll
    static void opensTheSeason(@TempDir Path temporary) throws Exception {
        ViewPage.assumeInstalled();
        folder = Files.createDirectory(temporary.resolve("season"));
        SmallSeason.write(folder);
        view = RunningView.of(folder).done();
        page = ViewPage.open(temporary, view.address());
    }

    @AfterAll
    static void closes() {
        if (page != null) {
            page.close();
            view.close();
            assertEquals(List.of(), view.bugs);
        }
    }

    private static void season(String query) {
        page.sized(1280, 1600).go("#/season" + query);
        page.await(
                "the season's days",
                () -> page.all("tbody tr").size() == 9 - 1
                        && page.text(".words").contains("Greatest"));
    }

    private static void day() {
        page.sized(1280, 1600).go("#/season");
        page.await("the season's days", () -> page.all("tbody tr a").size() == 8);
        page.run(
                "location.hash = [...document.querySelectorAll('tbody a')].find(a => a.textContent.includes('12 May')).getAttribute('href')");
        page.await(
                "the day's report",
                () -> page.text("main").contains("What happened")
                        && page.text(".found").contains("shock"));
    }

    private static void clean() throws IOException {
        assertEquals(List.of(), page.complaints());
        assertEquals(List.of(), page.foreignRequests());
        assertEquals(List.of(), page.accessibility());
        page.complaints(); // axe's own, of reading the canvas
    }

    @Test
    void aPeakOfOneSampleIsFoundByZoomingFromTheSeasonToMilliseconds() throws Exception {
        season("");
        assertTrue(
                page.text(".words").contains("Greatest at least 61 kN, at least 390 % of limit"), page.text(".words"));
        assertTrue(page.spanMicros() > 30 * 86_400_000_000L);
        page.picture("season");
        clean();

        for (int i = 0; i < 20 && page.spanMicros() > 30_000; i++) {
            long before = page.spanMicros();
            page.press("Zoom to the greatest tension");
            page.await("a closer view", () -> page.spanMicros() < before);
            assertTrue(
                    page.text(".words").contains("Greatest at least 61 kN, at least 390 % of limit"),
                    page.text(".words"));
        }

        assertTrue(page.spanMicros() <= 30_000, page.spanMicros() + " µs");
        page.picture("peak");
        clean();
    }

    @Test
    void anotherHookupSaysWhatIfOnScreenAndOnPaper() throws Exception {
        season("");
        assertFalse(page.one("#what-if").isDisplayed());
        String before = page.text("tbody");
        page.one("#switches option[value=round-the-corner]").click();
        page.await("the banner", () -> page.one("#what-if").isDisplayed());
        page.await(
                "days under what if",
                () -> !page.text("tbody").contains("not worked out")
                        && !page.text("tbody").equals(before));
        assertTrue(page.text("#what-if").startsWith("WHAT IF: hookup round-the-corner"));
        page.picture("what-if");
        clean();

        page.run("location.hash = document.querySelector('tbody a').getAttribute('href')");
        page.await("the day under what if", () -> page.text("main").contains("What happened"));
        assertTrue(page.one("#what-if").isDisplayed());
        page.medium("print");
        assertEquals(
                "table-header-group",
                page.run("return getComputedStyle(document.querySelector('.sheet-head')).display"));
        assertEquals("none", page.run("return getComputedStyle(document.querySelector('#switches')).display"));
        page.picture("print");
        byte[] pdf = page.printed();
        page.medium("");
        assertEquals("%PDF", new String(pdf, 0, 4, java.nio.charset.StandardCharsets.US_ASCII));
        assertTrue(pdf.length > 20_000, "the printed pages hold the trace and the report");
    }

    @Test
    void aNoteIsKeptInTheFolderAndShownAsText() throws Exception {
        day();
        page.picture("day");
        clean();
        String hostile = "<img src=x onerror=\"document.title='taken'\"> ../../etc & \"quoted\"";
        page.one(".note summary").click();
        page.await("what a note can be about", () -> page.all(".note option").size() > 2);
        page.one(".note textarea").sendKeys(hostile);
        page.one(".note button").click();
        page.await("the note", () -> page.text(".found").contains(hostile));
        assertEquals(0, page.all(".found img").size());
        assertTrue(Files.readString(folder.resolve("notes.jsonl")).contains("onerror"));
        day();
        page.await("the note again", () -> page.text(".found").contains(hostile));
        assertFalse(String.valueOf(page.run("return document.title")).contains("taken"));
    }

    @Test
    void keysMoveThroughTheTrace() {
        season("");
        long all = page.spanMicros();
        page.one(".plot").sendKeys("+");
        page.await("half the time", () -> page.spanMicros() < all * 0.6);
        String from = page.one(".trace").getAttribute("data-from");
        page.one(".plot").sendKeys(org.openqa.selenium.Keys.ARROW_RIGHT);
        page.await("later", () -> !page.one(".trace").getAttribute("data-from").equals(from));
        page.one(".plot").sendKeys("0");
        page.await("all again", () -> page.spanMicros() >= all);
    }

    @Test
    void fitsATelephone() throws Exception {
        for (String at : List.of("#/season", "#/day")) {
            if (at.equals("#/day")) {
                day();
                page.sized(360, 1600);
                page.await(
                        "the trace narrower", () -> page.one("canvas").getSize().getWidth() < 360);
            } else {
                page.sized(360, 1600).go(at);
                page.await("the season", () -> page.text(".words").contains("Greatest"));
            }
            assertEquals(
                    true, page.run("return document.documentElement.scrollWidth <= 360"), at + " scrolls sideways");
            page.picture("phone-" + at.substring(2));
            clean();
        }
    }
}
