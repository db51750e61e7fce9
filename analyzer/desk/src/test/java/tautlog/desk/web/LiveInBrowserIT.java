package tautlog.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;
import tautlog.sample.HookupSource;

/** The browser stays open while the logger's writer goes on writing beside it; nothing is loaded anew by hand. */
class LiveInBrowserIT {
    @TempDir
    Path temporary;

    @Test
    void theSamePageFollowsARecordingWhileItIsWritten() throws Exception {
        ViewPage.assumeInstalled();
        Path folder = Files.createDirectory(temporary.resolve("season"));
        try (RecordingWriter recording = RecordingWriter.open(folder.resolve("live.tautlog"), "upper-landing");
                RunningView view = RunningView.of(folder);
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.go("#/season");
            page.await("an empty folder", () -> page.text("main").contains("holds no recording"));
            page.run("window.opened = 'once'");

            ShortDay outing = ShortDay.begun(recording, 7);
            Instant start = Instant.now().minusSeconds(600);
            outing.clock(start);
            outing.hookup("straight", HookupSource.MARK);
            outing.hold(30, 120);
            outing.ramp(120, 5_000);
            outing.hold(3, 5_000);
            outing.commit();
            page.await("the first pull", () -> page.text(".words").contains("Greatest 5 kN, 31 % of limit"));
            page.await("its age", () -> page.text("#live").contains("The newest sample is"));

            outing.hold(3, 9_000);
            outing.commit();
            page.await(
                    "a greater one in the same pull", () -> page.text(".words").contains("Greatest 9 kN"));
            long length = page.spanMicros();

            page.click(".tools input[type=checkbox]");
            page.await("it follows", () -> page.text("#live").contains("old"));
            outing.hold(60, 120);
            outing.commit();
            page.await("the view has moved on", () -> newest(page) - start.toEpochMilli() * 1_000L > 95_000_000L);
            assertTrue(page.spanMicros() < length * 3, "the length in view stays while it follows");

            openDay(page);
            page.await("the day so far", () -> page.text(".report").contains("What happened"));
            outing.ramp(120, 33_000);
            outing.hold(1, 33_000);
            outing.ramp(33_000, 120);
            outing.hold(10, 120);
            outing.commit();
            page.await("the overload in the trace", () -> page.text(".words").contains("Greatest 33 kN, 21"));
            page.await("its finding", () -> page.text(".found").contains("overload 21"));
            page.await("its words in the report", () -> page.text(".report").contains("choker"));
            page.picture("live");

            outing.end();
            page.run("location.hash = '#/season'");
            page.await("closed", () -> !page.text("tbody").contains("still open"));
            assertEquals("once", page.run("return window.opened"), "the page was never loaded anew");
            assertEquals(List.of(), page.complaints());
            assertEquals(List.of(), view.bugs);
        }
    }

    private static long newest(ViewPage page) {
        String to = page.one(".trace").getAttribute("data-to");
        return to == null ? 0 : Long.parseLong(to);
    }

    private static void openDay(ViewPage page) {
        page.await("the day", () -> page.all("tbody a").size() == 1);
        page.run("location.hash = document.querySelector('tbody a').getAttribute('href')");
    }

    @Test
    void anOutingWhoseClockWasNeverKnownIsOpenedBySecondsFromItsStart() throws Exception {
        ViewPage.assumeInstalled();
        Path folder = Files.createDirectory(temporary.resolve("season"));
        SampleDay.write(folder);
        try (RecordingWriter recording =
                RecordingWriter.open(folder.resolve("upper-landing_undated-1.tautlog"), "upper-landing")) {
            for (int boot = 8; boot <= 9; boot++) {
                ShortDay outing = ShortDay.begun(recording, boot);
                outing.hookup("straight", HookupSource.MARK);
                outing.hold(20, 120);
                outing.ramp(120, 2_000 * boot);
                outing.hold(3, 2_000 * boot);
                outing.ramp(2_000 * boot, 120);
                outing.hold(5, 120);
                outing.end();
            }
        }
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.go("#/season");
            page.await("both days", () -> page.all("tbody a").size() == 2);
            assertTrue(page.text("tbody").contains("No clock"), page.text("tbody"));
            page.run(
                    "location.hash = [...document.querySelectorAll('tbody a')].find(a => a.textContent === 'No clock').getAttribute('href')");
            page.await(
                    "both outings",
                    () -> page.all(".trace").size() == 2
                            && page.all(".words").get(0).getText().contains("Greatest 16 kN")
                            && page.all(".words").get(1).getText().contains("Greatest 18 kN"));
            String first = page.all(".words").get(0).getText();
            assertTrue(first.startsWith("Showing 0.000 s to "), first);
            assertTrue(first.contains("Greatest 16 kN, 103 % of limit, 20."), first);
            page.await(
                    "each outing's own findings",
                    () -> page.all(".found").get(0).getText().contains("overload 103"));
            assertTrue(page.all(".found").get(1).getText().contains("overload 115"));
            assertTrue(!page.all(".found").get(1).getText().contains("overload 103"));
            page.await("the report's words", () -> page.text(".report").contains("s into outing 2"));
            assertEquals(0, page.all(".note").size(), "a note needs a time");

            page.run("document.querySelectorAll(\"button[aria-label='Zoom to the greatest tension']\")[1].click()");
            page.await("closer", () -> page.all(".words").get(1).getText().startsWith("Showing 18."));
            assertTrue(page.all(".words").get(0).getText().startsWith("Showing 0.000 s to "), "the other stays");
            page.picture("undated");
            assertEquals(List.of(), page.complaints());
            assertEquals(List.of(), page.accessibility());
            assertEquals(List.of(), view.bugs);
        }
    }
}
