package tautlog.desk.gear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.desk.page.Document;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.Screen;
import tautlog.desk.page.TextPage;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Band;
import tautlog.service.Act;
import tautlog.service.Verdict;

class GearPageTest {
    private static final Screen SCREEN = new Screen(ForceUnit.KN, ZoneOffset.UTC, true, true);

    private static Document page(Lives lives) {
        return GearPage.of(List.of(lives.winch()), SCREEN, Optional.of("ledger.jsonl"), List.of());
    }

    private static String text(Lives lives) {
        return TextPage.render(page(lives), Ink.PLAIN).replaceAll("\\s+", " ");
    }

    @Test
    void tellsWhatStaysOutAndWhy() {
        String text = text(new Lives().pieces(6).overload(0, Band.PAST_WLL).overload(30, Band.PAST_PROOF));

        assertTrue(text.contains("choker (past-proof)"), text);
        assertTrue(text.contains("measured and inspected by a competent person, or scrapped."), text);
        assertTrue(text.contains("Overloaded 2 times without an inspection since"), text);
        assertTrue(text.contains("Of 6 identical pieces 6 are out: which of them carried it, nobody said."), text);
        assertTrue(text.contains("until an inspection by a named competent person stands in the ledger"), text);
        assertTrue(text.contains("Stay out of the bight"), text);
    }

    @Test
    void neverSaysThatGearIsSound() {
        String text = text(new Lives().overload(0, Band.PAST_WLL).inspected(1, "A. Reed", "", Verdict.BACK_IN_SERVICE));

        assertFalse(text.contains("(past-wll)"), text);
        assertTrue(text.contains("That says nothing of the gear's state"), text);
        assertTrue(text.contains("No criterion entered reaches discard; a competent person decides."), text);
        assertFalse(text.matches(".*\\b(OK|safe)\\b.*"), text);
    }

    @Test
    void discardsARopeByTheFirstCriterionReached() {
        String text = text(new Lives().inspected(1, "A. Reed", "", Verdict.BACK_IN_SERVICE, "kink"));

        assertTrue(text.contains("Discard the rope: kinked (29 CFR 1910.184(f)(5); found: kink)."), text);
    }

    @Test
    void saysThatNoLedgerWasRead() {
        Document page = GearPage.of(List.of(new Lives().winch()), SCREEN, Optional.empty(), List.of("A note."));

        String text = TextPage.render(page, Ink.PLAIN).replaceAll("\\s+", " ");
        assertTrue(text.contains("No ledger was read"), text);
        assertTrue(text.contains("A note."), text);
        assertTrue(HtmlPage.render(page).contains("No ledger was read"));
    }

    @Test
    void marksWhatIsRetired() {
        Lives all = new Lives().entry(1, "", new Act.Retired(Lives.piece("")));
        assertTrue(text(all).contains("choker (retired)"), text(all));

        Lives one = new Lives().pieces(3).entry(1, "", new Act.Retired(Lives.piece("blue")));
        assertTrue(text(one).contains("choker (1 retired)"), text(one));
        assertFalse(text(new Lives()).contains("retired)"));
    }

    @Test
    void doesNotDenyTheInspectionThatScrappedIt() {
        Lives lives = new Lives().overload(0, Band.PAST_WLL);
        assertTrue(text(lives).contains("without an inspection since"), text(lives));

        String scrapped = text(lives.inspected(1, "A. Reed", "", Verdict.SCRAP));
        assertTrue(scrapped.contains("Scrap it, as its inspection says."), scrapped);
        assertTrue(scrapped.contains("Inspected by A. Reed on 4 May 2026: scrap it"), scrapped);
        assertFalse(scrapped.contains("without an inspection since"), scrapped);
        assertFalse(scrapped.contains("until an inspection by a named"), scrapped);
        assertFalse(scrapped.contains("until a competent person"), scrapped);
        assertFalse(scrapped.contains("neighbours"), scrapped);
        Lives worse = new Lives().overload(0, Band.PAST_PROOF).inspected(1, "A. Reed", "", Verdict.SCRAP);
        assertTrue(text(worse).contains("Scrap it, as its inspection says. Inspect its neighbours in the line."));
    }

    @Test
    void roundsAShareUpAsABound() {
        assertEquals("61 %", Screen.percentAtMost(0.601));
        assertEquals("99.1 %", Screen.percentAtMost(0.9901));
        assertEquals("55 %", Screen.percentAtMost(0.55));
    }

    @Test
    void tellsProgramsTheSame() {
        Lives lives = new Lives()
                .pieces(2)
                .overload(0, Band.PAST_WLL)
                .inspected(1, "A. Reed", "red", Verdict.BACK_IN_SERVICE);

        JsonObject json = JsonParser.parseString(
                        GearJson.render(List.of(lives.winch()), Optional.empty(), List.of(), List.of()))
                .getAsJsonObject();

        JsonObject gear = json.getAsJsonArray("winches")
                .get(0)
                .getAsJsonObject()
                .getAsJsonArray("gear")
                .get(0)
                .getAsJsonObject();
        JsonObject red = gear.getAsJsonArray("pieces").get(0).getAsJsonObject();
        JsonObject rest = gear.getAsJsonArray("pieces").get(1).getAsJsonObject();
        assertTrue(json.get("ledger").isJsonNull());
        assertEquals("nothing-known-against-it", red.get("standing").getAsString());
        assertEquals("A. Reed", red.get("answered_by").getAsString());
        assertEquals("out-of-service", rest.get("standing").getAsString());
        assertEquals(1, gear.getAsJsonObject("since").get("past_wll").getAsInt());
        assertEquals(
                "2026-05-04T07:00:00.000000Z",
                gear.getAsJsonArray("overloads")
                        .get(0)
                        .getAsJsonObject()
                        .get("start")
                        .getAsString());
        assertTrue(json.getAsJsonArray("winches")
                .get(0)
                .getAsJsonObject()
                .getAsJsonObject("driveline")
                .get("engaged_h")
                .isJsonNull());
    }
}
