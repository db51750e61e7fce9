package tautlog.desk.web;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** Debian's chromium, driven, with a fresh profile and no name resolved to any address. */
final class ViewPage implements AutoCloseable {
    private static final Path BROWSER = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
    private static final Path PICTURES =
            Path.of(System.getProperty("tautlog.root"), "analyzer", "desk", "target", "view-in-browser");

    /** It would say on the standard error that the browser is newer than the protocol's classes, which are not used here. */
    private static final Logger ABOUT_VERSIONS = Logger.getLogger("org.openqa.selenium.devtools.CdpVersionFinder");

    static {
        ABOUT_VERSIONS.setLevel(Level.SEVERE);
    }

    private final ChromeDriver driver;
    private final String address;

    private ViewPage(ChromeDriver driver, String address) {
        this.driver = driver;
        this.address = address;
    }

    static void assumeInstalled() {
        boolean isThere = Files.isExecutable(BROWSER) && Files.isExecutable(DRIVER);
        if ("1".equals(System.getenv("TAUTLOG_MANDATORY"))) {
            assertTrue(isThere, "chromium or chromedriver is missing and TAUTLOG_MANDATORY=1");
        }
        assumeTrue(isThere, "skipped: there is no " + BROWSER + " with " + DRIVER + " to open the page with");
    }

    static ViewPage open(Path folder, String address) throws IOException {
        Files.createDirectories(PICTURES);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(BROWSER.toFile());
        options.addArguments(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
                "--user-data-dir=" + Files.createTempDirectory(folder, "profile"));
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(DRIVER.toFile())
                .usingAnyFreePort()
                .withLogFile(new File(folder.toFile(), "driver.log"))
                .build();
        return new ViewPage(new ChromeDriver(service, options), address).sized(1280, 1600);
    }

    ViewPage sized(int width, int height) {
        driver.manage().window().setSize(new Dimension(width, height));
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
        return this;
    }

    ViewPage go(String hash) {
        driver.get("about:blank");
        driver.get(address + "/" + hash);
        return this;
    }

    /** A file beside the view, as a browser shows it. */
    ViewPage goToFile(Path file) {
        driver.get(file.toUri().toString());
        return this;
    }

    WebElement one(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    String text(String css) {
        return one(css).getText();
    }

    /** The buttons by their names for people who do not see them. */
    void press(String label) {
        one("button[aria-label='" + label + "']").click();
    }

    /** Clicks what may be drawn anew just now. */
    void click(String css) {
        await("a click on " + css, () -> {
            one(css).click();
            return true;
        });
    }

    Object run(String script, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(script, arguments);
    }

    void await(String what, BooleanSupplier condition) {
        long until = System.nanoTime() + 60_000_000_000L;
        while (System.nanoTime() < until) {
            try {
                if (condition.getAsBoolean()) {
                    return;
                }
                Thread.sleep(50);
            } catch (NoSuchElementException | StaleElementReferenceException e) {
                continue; // drawn anew meanwhile
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                fail("interrupted");
            }
        }
        fail(what + " did not come in a minute; the page says: " + text("body"));
    }

    /** Turns the wheel so far down with the mouse over the trace, at a part of its width from the left. */
    void wheel(double part, int down) {
        WebElement canvas = one("canvas");
        int fromMiddle = (int) Math.round((part - 0.5) * canvas.getSize().getWidth());
        new org.openqa.selenium.interactions.Actions(driver)
                .scrollFromOrigin(
                        org.openqa.selenium.interactions.WheelInput.ScrollOrigin.fromElement(canvas, fromMiddle, 0),
                        0,
                        down)
                .perform();
    }

    /** Two fingers on the trace go apart, or together, evenly. Places are parts of its width. */
    void pinch(double left, double right, double leftTo, double rightTo) {
        touch("touchStart", left, right);
        for (int step = 1; step <= 10; step++) {
            touch("touchMove", left + (leftTo - left) * step / 10, right + (rightTo - right) * step / 10);
        }
        touch("touchEnd");
    }

    /** One finger goes over the trace. */
    void swipe(double from, double to) {
        touch("touchStart", from);
        for (int step = 1; step <= 10; step++) {
            touch("touchMove", from + (to - from) * step / 10);
        }
        touch("touchEnd");
    }

    private void touch(String type, double... parts) {
        org.openqa.selenium.Rectangle canvas = one("canvas").getRect();
        double scrolled = ((Number) run("return window.scrollY")).doubleValue();
        List<Map<String, Object>> fingers = new java.util.ArrayList<>();
        for (int i = 0; i < parts.length; i++) {
            fingers.add(Map.of(
                    "x",
                    canvas.getX() + parts[i] * canvas.getWidth(),
                    "y",
                    canvas.getY() + canvas.getHeight() / 2.0 - scrolled,
                    "id",
                    i));
        }
        driver.executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", fingers));
    }

    /** The time under a place of the trace, as the plot is laid out: 58 pixels left of it, 10 right of it. */
    double timeAt(double part) {
        WebElement trace = one(".trace");
        double width = one("canvas").getSize().getWidth();
        double from = Double.parseDouble(String.valueOf(trace.getAttribute("data-from")));
        return from + spanMicros() * (part * width - 58) / (width - 68);
    }

    /** The length of the time in view, in microseconds. */
    long spanMicros() {
        WebElement trace = one(".trace");
        String from = trace.getAttribute("data-from");
        return from == null ? Long.MAX_VALUE : Long.parseLong(trace.getAttribute("data-to")) - Long.parseLong(from);
    }

    void picture(String name) throws IOException {
        Files.write(PICTURES.resolve(name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
    }

    /** What the page looks like on paper from here on. */
    void medium(String medium) {
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", medium));
    }

    byte[] printed(String name) throws IOException {
        byte[] pdf = java.util.Base64.getDecoder()
                .decode(driver.print(new org.openqa.selenium.print.PrintOptions())
                        .getContent());
        Files.write(PICTURES.resolve(name + ".pdf"), pdf);
        return pdf;
    }

    /** What axe-core finds, serious and critical, one line each. */
    @SuppressWarnings("unchecked")
    List<String> accessibility() throws IOException {
        try (InputStream in =
                ViewPage.class.getResourceAsStream("/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js")) {
            run(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
        Object found = driver.executeAsyncScript("const done = arguments[0];"
                + "axe.run(document).then(r => done(r.violations.filter(v => ['serious','critical'].includes(v.impact))"
                + ".map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 200) + ' ' + n.failureSummary).join(' | '))),"
                + " e => done(['axe failed: ' + e]));");
        return (List<String>) found;
    }

    /** Addresses that the page asked for which are not the server's. */
    @SuppressWarnings("unchecked")
    List<String> foreignRequests() {
        return (List<String>) run("return performance.getEntriesByType('resource').map(e => e.name)"
                + ".filter(n => !n.startsWith(location.origin + '/'));");
    }

    /** What the browser and the page complained of. */
    List<String> complaints() {
        return driver.manage().logs().get("browser").getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(entry -> entry.getMessage())
                .toList();
    }

    @Override
    public void close() {
        driver.quit();
    }
}
