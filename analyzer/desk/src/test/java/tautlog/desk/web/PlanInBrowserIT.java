package tautlog.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.WebElement;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.season.Offer;
import tautlog.rig.Rig;

/** A person plans a pull in the browser. Pictures are left in {@code target/view-in-browser}. */
class PlanInBrowserIT {
    private static final String LOG = "Norway spruce, 12 m, 40/28 cm";
    /** All texts of a plan in their order, however the page is built. */
    private static final String TEXTS =
            "return [...document.querySelectorAll(arguments[0].split(',').flatMap(root => arguments[1].split(',').map(one => root + ' ' + one)).join(','))]"
                    + ".map(one => one.textContent.replace(/\\s+/g, ' ').trim())";

    private static final String KINDS = "h1,h2,h3,p,li,caption,th,td,figcaption,svg title,svg text";

    private static Path folder;
    private static Path rigFile;
    private static RunningView view;
    private static ViewPage page;

    @BeforeAll
    static void opensTheView(@TempDir Path temporary) throws Exception {
        ViewPage.assumeInstalled();
        folder = temporary;
        Path season = Files.createDirectory(temporary.resolve("season"));
        SampleDay.write(season);
        rigFile = Files.writeString(temporary.resolve("rig.toml"), SampleDay.rigToml());
        String stronger = SampleDay.rigToml().replace("rated_pull = \"40 kN\"", "rated_pull = \"61 kN\"");
        view = RunningView.offering(
                        season, new Offer(Optional.of(Rig.parse("other.toml", stronger)), Optional.empty(), stronger))
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

    private static void form() {
        page.sized(1000, 1400).go("#/season");
        page.await("the season", () -> page.text("#views").contains("Plan a pull"));
        page.run("[...document.querySelectorAll('#views a')].find(a => a.textContent === 'Plan a pull').click()");
        page.await("the form", () -> page.all("#plan-rig option").size() == 2);
    }

    private static void fill(Map<String, String> fields) {
        fields.forEach((name, text) -> {
            WebElement field = page.one("#plan-" + name);
            if (field.getTagName().equals("select")) {
                page.one("#plan-" + name + " option[value='" + text + "']").click();
            } else {
                field.clear();
                field.sendKeys(text);
            }
        });
        page.one(".plan button").click();
    }

    private static void clean() throws IOException {
        assertEquals(List.of(), page.complaints());
        assertEquals(List.of(), page.foreignRequests());
        assertEquals(List.of(), page.accessibility());
        page.complaints();
    }

    @Test
    void saysThatItWorksWhileItDoes() {
        form();
        page.run("const asked = window.fetch; window.fetch = (of, how) => String(of).includes('/api/plan?')"
                + " ? new Promise((done) => { window.goOn = () => done(asked(of, how)); }) : asked(of, how);");
        fill(Map.of("log", LOG));
        page.await("working", () -> page.text(".ask [role=status]").equals("Working …"));
        page.run("window.goOn()");
        page.await("the plan", () -> page.text(".ask [role=status]").equals("The plan stands below."));
    }

    @Test
    void givesTheDocumentOfTheCommandWhateverIsAsked() throws Exception {
        form();
        fill(Map.of(
                "log",
                LOG,
                "ground",
                "flat",
                "slope",
                "15 deg",
                "slope-plus-minus",
                "3 deg",
                "hookup",
                "round-the-corner",
                "block-angle",
                "45 deg",
                "units",
                "lbf"));
        page.await("the plan", () -> page.text(".report").contains("What the figures rest on"));
        Object shown = page.run(TEXTS, ".report", KINDS);
        assertEquals(3, page.all(".report svg").size(), "load, expected, full");
        page.picture("plan");
        clean();

        Path html = folder.resolve("plan.html");
        Desk run = Desk.run(
                "plan",
                "--rig",
                rigFile,
                "--log",
                LOG,
                "--ground",
                "flat",
                "--slope",
                "15 deg",
                "--slope-plus-minus",
                "3 deg",
                "--hookup",
                "round-the-corner",
                "--block-angle",
                "45 deg",
                "--units",
                "lbf",
                "--html",
                html);
        assertEquals(0, run.code(), run.err());
        page.goToFile(html);
        Object told = page.run(TEXTS, "header,section:not(:last-of-type)", KINDS);

        assertTrue(((List<?>) told).size() > 100, told.toString());
        assertEquals(told, shown);
    }

    @Test
    void standsInTheAddressAndOnPaperWithTheSafetyText() throws Exception {
        form();
        fill(Map.of("log", LOG, "friction", "0.4..0.7"));
        page.await("the plan", () -> page.text(".report").contains("If it hangs up: the winch's full pull, 40.0 kN"));
        String address = String.valueOf(page.run("return location.hash"));

        page.go(address);
        page.await("the same plan", () -> page.text(".report").contains("friction 0.4 to 0.7"));
        assertTrue(page.text(".report").contains("straight")
                && page.text(".report").contains("round-the-corner"));
        assertTrue(page.text("footer").contains("Stay out of the bight"), page.text("footer"));
        String all = page.text("body");
        assertFalse(all.matches("(?s).*\\b(OK|safe)\\b.*"), all);

        page.medium("print");
        assertEquals("none", page.run("return getComputedStyle(document.querySelector('.plan')).display"));
        page.picture("plan-print");
        page.printed("plan-printed");
        page.medium("");
        fill(Map.of("friction", ""));
        page.await("the widest band", () -> page.text(".report").contains("Nobody said which ground"));
    }

    @Test
    void saysBesideEachFieldWhatCannotBeUnderstood() throws Exception {
        form();
        fill(Map.of(
                "log",
                "<b>spruce</b>, 12.5 m, 28/40 cm",
                "slope-plus-minus",
                "3 deg",
                "ground",
                "snow",
                "friction",
                "much",
                "block-angle",
                "170 deg"));

        page.await("refusals", () -> page.text("#flaw-log").contains("that is known here"));
        assertEquals("", page.text(".report"));
        assertTrue(page.text("#flaw-log").contains("<b>spruce</b>"), page.text("#flaw-log"));
        assertTrue(page.text("#flaw-slope-plus-minus").contains("Write slope, too"));
        assertTrue(page.text("#flaw-friction").contains("is no friction"));
        assertTrue(page.text("#flaw-block-angle").contains("is too wide"));
        assertEquals("", page.text("#flaw-slope"));
        assertEquals("true", page.one("#plan-log").getAttribute("aria-invalid"));
        assertEquals("plan-log", page.run("return document.activeElement.id"));
        assertTrue(page.text(".ask").contains("No plan: "), page.text(".ask"));
        page.picture("plan-refused");
        clean();

        fill(Map.of("log", LOG, "slope-plus-minus", "", "friction", "", "block-angle", ""));
        page.await("the plan", () -> page.text(".report").contains("log on packed snow"));
        assertEquals("", page.text("#flaw-log") + page.text("#flaw-friction"));
        assertEquals(null, page.one("#plan-log").getAttribute("aria-invalid"));
    }

    @Test
    void aPlanOfSomethingElseIsNotLeftStanding() {
        form();
        fill(Map.of("log", LOG));
        page.await("the plan", () -> page.text(".report").contains("If it hangs up"));
        page.one("#plan-slope").sendKeys("2");
        assertEquals("", page.text(".report"));
        assertTrue(page.text(".ask").contains("Changed"));
    }

    @Test
    void theOtherRigSaysWhatIfOnScreenAndOnPaper() throws Exception {
        form();
        assertFalse(page.one("#what-if").isDisplayed());
        fill(Map.of("rig", "other", "log", LOG));
        page.await("the plan", () -> page.text(".report").contains("the winch's full pull, 61.0 kN"));
        Thread.sleep(1_500); // the page asks the server each second what is new
        assertTrue(page.text("#what-if").startsWith("WHAT IF: another rig"), page.text("#what-if"));
        page.medium("print");
        assertTrue(page.one("#what-if").isDisplayed());
        page.medium("");
        clean();
        page.run("document.querySelector('#views a').click()");
        page.await(
                "the season without",
                () -> page.text("#title").equals("Season")
                        && !page.one("#what-if").isDisplayed());
    }

    @Test
    void fitsATelephone() throws Exception {
        form();
        page.sized(360, 1600);
        fill(Map.of("log", LOG));
        page.await("the plan", () -> page.text(".report").contains("If it hangs up"));
        assertEquals(true, page.run("return document.documentElement.scrollWidth <= 360"), "scrolls sideways");
        page.picture("phone-plan");
        clean();
    }
}
