package tautlog.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.SmallSeason;
import tautlog.desk.season.Offer;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

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
        String thin = SampleDay.rigToml().replace("5/16 in", "1/4 in");
        view = RunningView.offering(
                        folder,
                        new Offer(
                                Optional.of(Rig.parse("thin.toml", thin)),
                                Optional.of(CellCalibration.written(Calibration.of("0", "2"))),
                                thin + " twice as much"))
                .done();
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
        assertTrue(
                page.text(".trace summary").contains("findings are listed when at most 7 days are in view"),
                page.text(".trace summary"));
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
        page.click("#switches option[value=round-the-corner]");
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
        assertEquals(
                1_360L,
                page.run("return document.querySelector('canvas').width"),
                "drawn for the sheet's 680 pixels, twice as fine");
        page.picture("print");
        byte[] pdf = page.printed("printed");
        page.medium("");
        assertEquals("%PDF", new String(pdf, 0, 4, java.nio.charset.StandardCharsets.US_ASCII));
        assertTrue(pdf.length > 20_000, "the printed pages hold the trace and the report");
    }

    @Test
    void aNoteIsKeptInTheFolderAndShownAsText() throws Exception {
        day();
        page.picture("day");
        clean();
        String hostile = "turned \u202e <img src=x onerror=\"document.title='taken'\"> ../../etc & \"quoted\"";
        page.one(".note summary").click();
        page.await("what a note can be about", () -> page.all(".note option").size() > 2);
        page.one(".note textarea").sendKeys(hostile);
        page.one(".note button").click();
        String shown = hostile.replace('\u202e', '\ufffd');
        page.await("the note", () -> page.text(".found").contains(shown));
        assertEquals(0, page.all(".found img").size());
        assertTrue(Files.readString(folder.resolve("notes.jsonl")).contains("onerror"));
        day();
        page.await("the note again", () -> page.text(".found").contains(shown));
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
    void theOtherRigAndTheOtherCalibrationAreSwitchedOnAndOff() throws Exception {
        season("");
        String asRecorded = page.text("tbody");
        page.click("#switches label:nth-of-type(2) input");
        page.await("the banner", () -> page.text("#what-if").contains("another rig is used than the one recorded"));
        page.await(
                "days of the thin choker",
                () -> !page.text("tbody").contains("not worked out")
                        && !page.text("tbody").equals(asRecorded));
        // 3150 lbf · 0.75 (49 CFR 393.108, grade 70, 1/4 in) instead of 4700 lbf · 0.75
        assertTrue(
                page.text(".words").contains("Greatest at least 61 kN, at least 581 % of limit"), page.text(".words"));
        clean();

        page.click("#switches label:nth-of-type(3) input");
        page.await("both", () -> page.text("#what-if").contains("another calibration is used"));
        page.await("twice the force", () -> page.text(".words").contains("Greatest at least 122 kN"));

        page.click("#switches label:nth-of-type(3) input");
        page.await("one", () -> !page.text("#what-if").contains("another calibration is used"));
        page.click("#switches label:nth-of-type(2) input");
        page.await(
                "as recorded",
                () -> !page.one("#what-if").isDisplayed() && page.text("tbody").equals(asRecorded));
    }

    @Test
    void theWheelZoomsWhereTheMouseIs() {
        season("");
        long all = page.spanMicros();
        double place = 0.3;
        double before = page.timeAt(place);
        page.wheel(place, -100);
        page.await("closer", () -> page.spanMicros() < all * 0.75);
        assertEquals(before, page.timeAt(place), page.spanMicros() * 0.005, "the time under the mouse stays");
        long near = page.spanMicros();
        page.wheel(place, 100);
        page.await("farther", () -> page.spanMicros() > near * 1.3);
        assertEquals(before, page.timeAt(place), page.spanMicros() * 0.005);
    }

    @Test
    void fingersPinchAndSwipe() throws Exception {
        season("");
        page.sized(360, 800);
        page.await("the trace narrower", () -> page.one("canvas").getSize().getWidth() < 360);
        page.run("document.querySelector('canvas').scrollIntoView()");
        long all = page.spanMicros();
        double before = page.timeAt(0.5);
        page.pinch(0.45, 0.55, 0.3, 0.7);
        page.await("a quarter of the time", () -> page.spanMicros() < all * 0.3);
        assertTrue(page.spanMicros() > all * 0.2, page.spanMicros() + " of " + all);
        assertEquals(before, page.timeAt(0.5), page.spanMicros() * 0.05, "the time between the fingers stays");

        double left = page.timeAt(0.3);
        long near = page.spanMicros();
        page.swipe(0.7, 0.3);
        page.await("moved on", () -> page.timeAt(0.3) > left + near * 0.3);
        assertEquals(near, page.spanMicros(), near * 0.01, "one finger does not zoom");
        assertEquals(page.timeAt(0.3), left + near * 0.4 * 360 / 292, near * 0.1);

        page.pinch(0.3, 0.7, 0.45, 0.55);
        page.await("all again", () -> page.spanMicros() > near * 3);
        assertEquals(true, page.run("return document.documentElement.scrollWidth <= 360"));
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
