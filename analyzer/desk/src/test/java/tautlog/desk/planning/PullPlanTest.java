package tautlog.desk.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.StandingText;
import tautlog.desk.page.TextPage;
import tautlog.fixtures.Rigs;
import tautlog.plan.HaulText;
import tautlog.plan.PlanException;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

class PullPlanTest {
    private static final Rig EXAMPLE = Rigs.parsed(Rigs.exampleText());
    private static final double GRAVITY = 9.80665;

    private static String text(PullPlan plan) {
        return TextPage.render(plan.document(ForceUnit.KN), Ink.PLAIN);
    }

    private static String flat(PullPlan plan) {
        return text(plan).replaceAll("\\s+", " ");
    }

    private static void assertSays(String page, String sentence) {
        assertTrue(page.contains(sentence), "says: " + sentence + "\n" + page);
    }

    private static JsonObject hookup(PullPlan plan, int index) {
        return JsonParser.parseString(plan.json())
                .getAsJsonObject()
                .getAsJsonArray("hookups")
                .get(index)
                .getAsJsonObject();
    }

    private static JsonObject item(JsonObject hookup, String gear) {
        for (JsonElement item : hookup.getAsJsonArray("items")) {
            if (item.getAsJsonObject().get("gear").getAsString().equals(gear)) {
                return item.getAsJsonObject();
            }
        }
        throw new AssertionError("no item " + gear);
    }

    @Test
    void everyItemsShareOfTheExpectedPullStandsBesideThatOfTheFullPull() {
        PullPlan plan = Plans.of(EXAMPLE, Plans.TONNE, "0.5..0.8", "0 deg");

        // 4700 lb · 0.75 = 15.68 kN; 0.5 · 800 kg to 0.8 · 1200 kg at g are 3.92 to 9.41 kN
        String page = flat(plan);
        assertSays(page, "Expected pull: 25–61 % of limit; if it hangs up: 256 % of limit.");
        assertSays(page, "choker choker 1.00 15.7 kN 25–61 % 256 %");
        assertSays(page, "strap-1 block-strap 1.73 20.0 kN 33–82 % 347 %");
        JsonObject choker = item(hookup(plan, 0), "choker");
        double allowed = 4700 * 4.4482216152605 * 0.75;
        assertEquals(0.5 * 800 * GRAVITY / allowed, choker.get("share_low").getAsDouble(), 2e-4);
        assertEquals(0.8 * 1200 * GRAVITY / allowed, choker.get("share_high").getAsDouble(), 2e-4);
        assertEquals(40_000 / allowed, choker.get("full_pull_share").getAsDouble(), 1e-9);
    }

    @Test
    void aStrapCarriesTheCosineOfHalfTheAngleAskedFor() {
        PullPlan plan = Plans.of(EXAMPLE, Plans.TONNE, "0.5", "0 deg", Optional.of("90 deg"));

        JsonObject corner = hookup(plan, 1);
        assertEquals(Math.sqrt(2), item(corner, "strap-1").get("multiple").getAsDouble(), 1e-11);
        assertEquals(
                40_000 * Math.sqrt(2),
                item(corner, "strap-1").get("full_pull_load_n").getAsDouble(),
                1e-6);
        assertEquals(90, corner.get("block_angle_deg").getAsDouble());
        assertTrue(hookup(plan, 0).get("block_angle_deg").isJsonNull());
        assertSays(flat(plan), "Angle between the lines at the block: 90°.");
    }

    @Test
    void whatGovernsAndWhatBreaksFirstIsSaidForEveryAngleAsItCloses() {
        PullPlan plan = Plans.of(EXAMPLE, Plans.TONNE, "0.5", "0 deg");

        // choker: 15.68 kN; strap: 20 kN / (2 cos(a/2)) is less below 2 acos(20 / 31.36) = 100.7°
        assertSays(flat(plan), "The limit is set by choker from 150° to 101°, strap-1 from 100° to 0°.");
        // breaking loads 62.7 kN and 100 kN / (2 cos(a/2)): 2 acos(100 / 125.4) = 74.2°
        assertSays(flat(plan), "choker from 150° to 75°, strap-1 from 74° to 0°.");
        JsonArray angles = hookup(plan, 1).getAsJsonArray("by_block_angle");
        assertEquals(151, angles.size());
        assertEquals(150, angles.get(0).getAsJsonObject().get("block_angle_deg").getAsInt());
        JsonObject closed = angles.get(150).getAsJsonObject();
        assertEquals(2, closed.get("block_multiple").getAsDouble());
        assertEquals(10_000, closed.get("limit_n").getAsDouble());
        assertEquals(0, hookup(plan, 0).getAsJsonArray("by_block_angle").size());
    }

    @Test
    void whereTheLogMayRunNoLowEndIsGivenAndThatIsSaidFirst() {
        PullPlan plan = Plans.of(EXAMPLE, Plans.TONNE, "0.2..0.5", "-15 deg");

        String page = flat(plan);
        assertSays(page, "! may run: On this slope the log may run by itself");
        assertSays(page, "Expected pull: ?–");
        JsonObject straight = hookup(plan, 0);
        assertTrue(straight.get("share_low").isJsonNull());
        assertTrue(item(straight, "choker").get("load_low_n").isJsonNull());
        assertFalse(straight.get("share_high").isJsonNull());
        JsonObject pull = JsonParser.parseString(plan.json()).getAsJsonObject().getAsJsonObject("pull");
        assertTrue(pull.get("may_run_by_itself").getAsBoolean());
        assertTrue(pull.get("low_n").getAsDouble() < 0);
    }

    @Test
    void whereTheLogSurelyRunsNoExpectedPullIsGivenAtAll() {
        PullPlan plan = Plans.of(EXAMPLE, Plans.TONNE, "0.1..0.2", "-30 deg");

        String page = flat(plan);
        assertSays(page, "none can be given, it runs by itself. Up to");
        assertSays(page, "Expected pull: none can be given; if it hangs up: 256 % of limit.");
        assertSays(page, "choker choker 1.00 15.7 kN it runs 256 %");
        assertTrue(hookup(plan, 0).get("share_high").isJsonNull());
        assertFalse(HtmlPage.render(plan.document(ForceUnit.KN)).contains("-expected\""), "no drawing of it either");
    }

    @Test
    void anExpectedPullPastTheLimitIsAMatterOfAction() {
        PullPlan maybe = Plans.of(EXAMPLE, "1000 kg/m3, 3 m, mid 100 cm", "0.5..0.8", "0 deg");
        PullPlan surely = Plans.of(EXAMPLE, "1000 kg/m3, 6 m, mid 100 cm", "0.5..0.8", "0 deg");

        assertSays(flat(maybe), "! past the limit: The expected pull alone may be more than choker may carry.");
        assertSays(flat(surely), "! past the limit: The expected pull alone is more than");
        assertSays(flat(surely), "The expected pull may be more than the winch can pull");
    }

    @Test
    void behindAMovingBlockTheLineCarriesHalfOfThePull() {
        String gear = "[[gear]]\nid = \"c\"\nkind = \"chain\"\nwll = \"40 kN\"\n"
                + "[[gear]]\nid = \"b\"\nkind = \"block\"\nwll = \"80 kN\"\n"
                + "[[gear]]\nid = \"r\"\nkind = \"rope\"\nbreaking_force = \"80 kN\"\n";
        Rig doubled = Plans.rig(
                gear, "{ gear = \"r\" }, { gear = \"b\", as = \"moving-block\" }, { gear = \"c\", as = \"choker\" }");

        JsonObject hookup = hookup(Plans.of(doubled, Plans.TONNE, "0.5", "0 deg"), 0);

        double pull = 0.5 * 1200 * GRAVITY;
        assertEquals(pull / 2, hookup.get("tension_high_n").getAsDouble(), 2);
        assertEquals(pull, item(hookup, "c").get("load_high_n").getAsDouble(), 2);
        assertEquals(pull / 2, item(hookup, "r").get("load_high_n").getAsDouble(), 2);
    }

    @Test
    void sharesOfALimitThatIsOnlyAnUpperBoundAreAtLeast() {
        Rig sharp = Plans.rig(
                "[[gear]]\nid = \"c\"\nkind = \"chain\"\nwll = \"10 kN\"\n",
                "{ gear = \"c\", as = \"choker\", choke_angle_deg = 60 }");

        String page = flat(Plans.of(sharp, Plans.TONNE, "0.5", "0 deg"));

        assertSays(page, "Expected pull: at least 52–79 % of limit; if it hangs up: at least 534 % of limit.");
        assertSays(page, "c choker 1.00 ≤ 7.50 kN ≥ 52–79 % ≥ 534 %");
    }

    @Test
    void thePageNamesWhatItDoesNotKnowAndNeverCallsAnythingSafe() {
        for (String slope : new String[] {"0 deg", "-15 deg", "-40 deg", "30 deg"}) {
            String page = flat(Plans.of(EXAMPLE, "red spruce, 4 m, mid 10 cm", "0.2..0.3", slope));
            StandingText.sentences().forEach(sentence -> assertSays(page, sentence));
            PlanWords.unknown().forEach(sentence -> assertSays(page, sentence));
            assertSays(page, "If it hangs up: the winch's full pull, 40.0 kN");
            String words = page.replace("not a safety device", "").toLowerCase(Locale.ROOT);
            for (String word : new String[] {" ok", "safe", "fine", "allowed to pull", "no problem", "sufficient"}) {
                assertFalse(words.contains(word), word + " in\n" + page);
            }
        }
    }

    @Test
    void noLineIsWiderThanAPage() {
        text(Plans.of(EXAMPLE, Plans.TONNE, "0.5..0.8", "-15 deg"))
                .lines()
                .forEach(line -> assertTrue(line.length() <= 80, line));
    }

    @Test
    void whatDoesNotFitTheRigIsToldWithTheRest() {
        Rig straight = Plans.rig("[[gear]]\nid = \"c\"\nkind = \"chain\"\nwll = \"10 kN\"\n", "{ gear = \"c\" }");
        HaulText haul = new HaulText("oak", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

        String message = assertThrows(
                        PlanException.class,
                        () -> PlanRequest.read(new PlanText(haul, Optional.of("60"), Optional.empty()), straight))
                .getMessage();
        String wrong = assertThrows(
                        PlanException.class,
                        () -> PlanRequest.read(new PlanText(haul, Optional.of("151"), Optional.of("x")), straight))
                .getMessage();

        assertSays(message, "log: \"oak\" has not three parts");
        assertSays(message, "block-angle: no fixed block turns the line");
        assertSays(wrong, "block-angle: \"151\" is too wide");
        assertSays(wrong, "hookup: the rig has no hookup \"x\".\n  It has: h.");
    }
}
