package tautlog.desk.limits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.desk.page.Ink;
import tautlog.desk.page.StandingText;
import tautlog.fixtures.Rigs;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

class LimitsTextTest {
    private static final Rig EXAMPLE = Rigs.parsed(Rigs.exampleText());

    /** The page with line breaks as single spaces, to look for sentences. */
    private static String flat(String page) {
        return page.replaceAll("\\s+", " ");
    }

    private static void assertSays(String page, String sentence) {
        assertTrue(flat(page).contains(sentence), "says: " + sentence + "\n" + page);
    }

    private static Rig rig(String gear, String items) {
        return Rigs.parsed("schema = 1\n[winch]\nname = \"w\"\nrated_pull = \"40 kN\"\n" + gear
                + "[[hookup]]\nid = \"h\"\nitems = [ " + items + " ]\n");
    }

    @Test
    void eachHookupHasItsLimitWhatSetsItAndWhatHappensAtFullPull() {
        String page = LimitsText.render(EXAMPLE, Optional.empty());

        // 4700 lb · 0.75 = 15.68 kN; strap 20 kN / √3 = 11.55 kN; choker at 40 kN carries 255.1 %
        assertSays(page, "Limit of straight: 15.7 kN in the line, set by choker.");
        assertSays(page, "Limit of round-the-corner: 11.5 kN in the line, set by strap-1.");
        assertSays(page, "STRAIGHT (SELECTOR 1, DEFAULT)");
        assertSays(page, "choker choker 1.00 × tension 15.7 kN 62.7 kN 256 %");
        assertSays(page, "At the winch's full pull (40.0 kN) rope, choker would be past what is allowed.");
        assertSays(page, "choker breaks first, at a tension of 62.7 kN");
        assertSays(page, "A winch set to pull no more than the limit is as good a cure as stronger gear.");
    }

    @Test
    void everyFigureNamesItsSourceAndWhatWasAssumed() {
        String page = LimitsText.render(EXAMPLE, Optional.of("straight"));

        assertSays(page, "choker: Rating: 49 CFR 393.108, table of chain, grade 70.");
        assertSays(page, "The table rates cargo tie-downs; for pulling it is borrowed.");
        assertSays(page, "Grade 70 is no lifting chain.");
        assertSays(page, "assumed ≥ 120°");
        assertSays(page, "EN 12385-4");
        assertFalse(flat(page).contains("strap-1"), "only the hookup asked for");
    }

    @Test
    void everyPageCarriesTheStandingTextAndWhatTheCellCannotSee() {
        String page = LimitsText.render(EXAMPLE, Optional.of("straight"));

        StandingText.sentences().forEach(sentence -> assertSays(page, sentence));
        assertSays(page, "Loads of logs hung on the winch's frame while driving are not seen.");
        assertSays(page, "It reaches its own rating at a tension of 60.0 kN");
    }

    @Test
    void anUpperBoundIsNeverShownAsALimit() {
        Rig rig = rig(
                "[[gear]]\nid = \"c\"\nkind = \"chain\"\nwll = \"10 kN\"\n",
                "{ gear = \"c\", as = \"choker\", choke_angle_deg = 60 }");

        String page = LimitsText.render(rig, Optional.empty());

        assertSays(page, "Limit of h: at most 7.50 kN in the line, set by c.");
        assertSays(page, "The true limit is lower than this figure by an unknown amount");
        assertSays(page, "≤ 7.50 kN");
        assertSays(page, "≥ 534 %");
    }

    @Test
    void aChokerThatOutlastsTheRopeIsWarnedOf() {
        Rig rig = rig(
                "[[gear]]\nid = \"c\"\nkind = \"chain\"\nwll = \"90 kN\"\n"
                        + "[[gear]]\nid = \"r\"\nkind = \"rope\"\nbreaking_force = \"80 kN\"\n",
                "{ gear = \"r\" }, { gear = \"c\", as = \"choker\" }");

        assertSays(LimitsText.render(rig, Optional.empty()), "c: This choker would outlast the rope.");
    }

    @Test
    void wornChainIsCalledOutOfServiceBeforeAnyFigure() {
        Rig rig = rig(
                "[[gear]]\nid = \"c\"\nkind = \"chain\"\ngrade = 70\nsize = \"3/8 in\"\nlink_thickness = \"7 mm\"\n",
                "{ gear = \"c\" }");

        String page = flat(LimitsText.render(rig, Optional.empty()));

        assertTrue(page.contains("! c: Out of service"), page);
        assertTrue(page.indexOf("Out of service") < page.indexOf("may carry"), page);
    }

    @Test
    void unknownBreakingLoadsAreCalledUnknownAndNoCellIsNotASafeOne() {
        Rig rig = rig("[[gear]]\nid = \"s\"\nkind = \"shackle\"\nwll = \"50 kN\"\n", "{ gear = \"s\" }");

        String page = LimitsText.render(rig, Optional.empty());

        assertSays(page, "no item is past its known limit.");
        assertSays(page, "Which item breaks first is unknown");
        assertSays(page, "Breaking load unknown: s.");
        assertSays(page, "Its own rating is unknown.");
    }

    @Test
    void forcesAreShownInTheUnitAskedForAndNoLineIsWiderThanAPage() {
        String page = new LimitsText(ForceUnit.LBF, Ink.PLAIN).show(EXAMPLE, Optional.empty());

        assertSays(page, "Limit of straight: 3525 lbf in the line, set by choker.");
        page.lines().forEach(line -> assertTrue(line.length() <= 80, line));
    }

    @Test
    void anUnknownHookupIsRefusedWithThoseThereAre() {
        var wrong =
                assertThrows(IllegalArgumentException.class, () -> LimitsText.render(EXAMPLE, Optional.of("corner")));

        assertEquals("\"corner\" is no hookup of this rig. It has: straight, round-the-corner.", wrong.getMessage());
    }
}
