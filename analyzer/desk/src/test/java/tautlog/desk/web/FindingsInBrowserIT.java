package tautlog.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;
import tautlog.sample.HookupSource;

/** What the list below a trace, and the labels above it, say of findings and notes. */
class FindingsInBrowserIT {
    @TempDir
    Path temporary;

    private Path folder;

    @BeforeEach
    void needsABrowser() throws Exception {
        ViewPage.assumeInstalled();
        folder = Files.createDirectory(temporary.resolve("season"));
    }

    private void day(Consumer<ShortDay> what) throws Exception {
        ShortDay.write(folder, "upper-landing.tautlog", what);
    }

    /** The season's trace between two moments, in seconds from the start of {@link #day}. */
    private static String between(double from, double to) {
        long start = NotesJson.micros(SampleDay.START);
        return "#/season?from=" + (start + Math.round(from * 1e6)) + "&to=" + (start + Math.round(to * 1e6));
    }

    private static void awaitInList(ViewPage page, String words) {
        page.await("in the list: " + words, () -> page.text(".found").contains(words));
    }

    @Test
    void theSeasonListsWhatIsFoundWhileItIsWatched() throws Exception {
        try (RecordingWriter recording = RecordingWriter.open(folder.resolve("live.tautlog"), "upper-landing");
                RunningView view = RunningView.of(folder);
                ViewPage page = ViewPage.open(temporary, view.address())) {
            ShortDay outing = ShortDay.begun(recording, 7);
            outing.clock(Instant.now().minusSeconds(600));
            outing.hookup("straight", HookupSource.MARK);
            outing.hold(30, 120);
            outing.ramp(120, 5_000);
            outing.hold(3, 5_000);
            outing.commit();
            page.go("#/season");
            page.await("the day as known so far", () -> page.text("tbody").contains("31 %"));

            outing.ramp(5_000, 33_000);
            outing.hold(1, 33_000);
            outing.ramp(33_000, 120);
            outing.hold(10, 120);
            outing.commit();
            page.await(
                    "the overload in the day's row",
                    () -> page.all("tbody tr.over").size() == 1);
            awaitInList(page, "overload 21");
            assertEquals(List.of(), view.bugs);
        }
    }

    @Test
    void anOverloadIsInViewAsLongAsItLasts() throws Exception {
        day(outing -> {
            outing.hookup("straight", HookupSource.MARK);
            outing.hold(20, 120);
            outing.ramp(120, 20_000);
            outing.hold(10, 20_000);
            outing.ramp(20_000, 120);
            outing.hold(10, 120);
        });
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.go(between(24, 26));
            page.await("inside it", () -> page.text(".words").contains("Greatest 20 kN"));
            awaitInList(page, "overload 128 % of limit");
            page.go(between(32, 34));
            page.await("behind it", () -> page.text(".words").contains("Greatest 0.12 kN"));
            page.await("no finding", () -> page.text(".trace summary").startsWith("In view: no finding"));
            assertEquals(List.of(), page.complaints());
        }
    }

    /** From slack to the peak between two samples: fewer than the four that FINDINGS.md asks of a resolved shock. */
    @Test
    void aShockTooFastForTheInstrumentIsABound() throws Exception {
        day(outing -> {
            outing.hookup("straight", HookupSource.MARK);
            outing.hold(20, 0);
            outing.hold(0.2, 13_000);
            outing.hold(5, 6_000);
            outing.hold(5, 0);
        });
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.go("#/season");
            awaitInList(page, "shock at least 82 % of limit, true peak may be higher");
            page.await(
                    "the greatest, too",
                    () -> page.text(".words").contains("Greatest at least 13 kN, at least 82 % of limit"));
            page.await("the day's row", () -> page.text("tbody").contains("at least 82 %"));
            page.go(between(22, 24));
            page.await("no finding", () -> page.text(".trace summary").startsWith("In view: no finding"));
            page.await(
                    "later in that pull it is no bound",
                    () -> page.text(".words").contains("Greatest 6 kN, 38 %"));
        }
    }

    @Test
    void theWorstFindingGetsItsLabelFirst() throws Exception {
        day(outing -> outing.hold(20, 120));
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.go("#/season");
            page.run("import('/plot.js').then(plot => { window.Plot = plot.Plot; })");
            page.await("the plot", () -> Boolean.TRUE.equals(page.run("return Boolean(window.Plot)")));
            String drawn = String.valueOf(page.run("const none = { from_us: [], to_us: [], least_n: [], greatest_n: [],"
                    + " greatest_rpm: [], samples: [], missing_from_us: [], missing_to_us: [] };"
                    + "const plot = new Plot(false); const said = []; const text = plot.text;"
                    + "plot.text = function (words, ...more) { said.push(words); text.call(this, words, ...more); };"
                    + "const sign = (at, sign, words, severity) => ({ at, sign, words, severity, name: 'x' });"
                    + "plot.draw([0, 1e6], { tension: none, shaft: none, limits: [], outings: [], marks: [] }, ["
                    + "sign(1e5, 'a', 'a note of somebody', 0), sign(1.01e5, 'b', 'jolt 20 % of limit', 0.2),"
                    + "sign(1.02e5, 'c', 'shock 40 % of limit', 0.4), sign(1.03e5, 'd', 'overload 390 % of limit', 1e3),"
                    + "sign(9.99e5, 'e', 'overload 391 % of limit', 1e3)]);"
                    + "return said.join('\\n');"));
            assertTrue(drawn.contains("d overload 390 % of limit"), drawn);
            assertTrue(drawn.contains("c shock 40 % of limit"), drawn);
            assertTrue(drawn.contains("e overload 391 % of limit"), "at the right end, too: " + drawn);
        }
    }

    @Test
    void labelsOfTheTimeAxisNeverTouch() throws Exception {
        day(outing -> outing.hold(20, 120));
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.go("#/season");
            page.run("import('/plot.js').then(plot => { window.Plot = plot.Plot; })");
            page.await("the plot", () -> Boolean.TRUE.equals(page.run("return Boolean(window.Plot)")));
            Object touching = page.run("const start = Date.parse('2026-05-04T07:00:00Z') * 1000; const found = [];"
                    + "for (const undated of [false, true]) for (const wide of [330, 700, 1200])"
                    + " for (let span = 200; span < 3e13; span *= 1.37) {"
                    + "  const plot = new Plot(undated); const box = document.createElement('div');"
                    + "  box.style.width = wide + 'px'; box.append(plot.canvas); document.body.append(box);"
                    + "  let end = -Infinity, n = 0; plot.text = function (words, x, y, align) {"
                    + "    if (align !== 'center' || y < 380) return; const half = this.c.measureText(words).width / 2; n++;"
                    + "    if (x - half < end + 4) found.push([wide, span, words]); end = x + half; };"
                    + "  plot.draw([start, start + span], null, []); if (n === 0) found.push([wide, span, 'no label']);"
                    + "  plot.close(); box.remove(); }"
                    + "return found.map(String);");
            assertEquals(List.of(), touching);
        }
    }

    @Test
    void aTableWiderThanTheScreenSaysThatItMoves() throws Exception {
        day(outing -> outing.hold(20, 120));
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.sized(360, 800).go("#/season");
            page.await(
                    "the hint",
                    () -> page.one("[aria-labelledby=days-head] .sideways").isDisplayed());
            assertEquals(List.of(), page.accessibility());
            page.sized(1280, 1600);
            page.await(
                    "none",
                    () -> !page.one("[aria-labelledby=days-head] .sideways").isDisplayed());
        }
    }

    @Test
    void anAddressThatIsNoneIsSaidToBeNotKnown() throws Exception {
        day(outing -> outing.hold(20, 120));
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            for (String hash : List.of("#/day/%E0%A4", "#/nothing", "#/day/x/y")) {
                page.go(hash);
                page.await(hash, () -> page.text("main").startsWith("This address is not known."));
            }
            page.click("#views a");
            page.await("the season", () -> page.all("tbody a").size() == 1);
            assertEquals(List.of(), page.complaints());
        }
    }

    @Test
    void aNoteWrittenByHandIsShownAndALineThatIsNoneIsCounted() throws Exception {
        day(outing -> outing.hold(20, 120));
        Files.writeString(
                folder.resolve("notes.jsonl"),
                "{\"at\":\"" + SampleDay.START.plusSeconds(5) + "\",\"text\":\"a stump\"}\nnone\n");
        try (RunningView view = RunningView.of(folder).done();
                ViewPage page = ViewPage.open(temporary, view.address())) {
            page.go("#/season");
            awaitInList(page, "note: a stump");
            page.await(
                    "the other line",
                    () -> page.text(".trace")
                            .contains("1 line of notes.jsonl could not be read: what it says is not shown."));
        }
    }
}
