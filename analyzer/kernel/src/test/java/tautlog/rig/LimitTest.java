package tautlog.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;
import tautlog.fixtures.Rigs;
import tautlog.quantity.Angle;

class LimitTest {
    private static final String BLOCK = RigText.gear("b", "block", "wll = \"80 kN\"");
    private static final String STRAP = RigText.gear("s", "web", "wll = \"20 kN\"");
    private static final String CHAIN = RigText.gear("c", "chain", "wll = \"10 kN\"");
    private static final String ROPE = RigText.gear("r", "rope", "breaking_force = \"80 kN\"\ntermination = 1.0");

    private static void assertNumber(String expected, BigDecimal actual) {
        assertEquals(0, new BigDecimal(expected).compareTo(actual), "expected " + expected + ", was " + actual);
    }

    @Test
    void aBlockCarriesTwiceTheCosineOfHalfTheAngle() {
        for (CSVRecord row : ReferenceTable.rows("block_load_factor")) {
            String angle = row.get("angle_between_lines_deg");
            double factor = BlockFactor.of(new Angle(new BigDecimal(angle))).doubleValue();

            assertEquals(Double.parseDouble(row.get("factor_exact_2cos_half")), factor, 5e-10, row.toString());
            assertEquals(Double.parseDouble(row.get("published_2dp")), factor, 0.02, row.toString());
        }
    }

    @Test
    void aBlocksFactorIsGoodToThirtyFourDigitsAndExactWhereItCanBe() {
        // square roots of 2 and 3 to 50 digits: OEIS A002193, A002194, from memory, checked here by squaring
        BigDecimal root3 = new BigDecimal("1.7320508075688772935274463415058723669428052538104");
        BigDecimal root2 = new BigDecimal("1.4142135623730950488016887242096980785696718753769");
        assertEquals(
                0,
                root3.multiply(root3)
                        .subtract(new BigDecimal("3"))
                        .movePointRight(47)
                        .intValue());
        assertEquals(
                0,
                root2.multiply(root2)
                        .subtract(new BigDecimal("2"))
                        .movePointRight(47)
                        .intValue());

        assertNumber("2", BlockFactor.of(new Angle(BigDecimal.ZERO)));
        assertNumber("1", BlockFactor.of(new Angle(new BigDecimal("120"))));
        assertNumber(root3.round(Angle.DIGITS).toString(), BlockFactor.of(new Angle(new BigDecimal("60"))));
        assertNumber(root2.round(Angle.DIGITS).toString(), BlockFactor.of(new Angle(new BigDecimal("90"))));
    }

    @Test
    void aBlockWithoutAnAngleCarriesTheMostItCan() {
        LoadedItem block =
                RigText.items(BLOCK, "{ gear = \"b\", as = \"block\" }").get(0);

        assertNumber("2", block.multiple());
        assertTrue(String.join(" ", block.notes()).contains("taken as 0 degrees"));
    }

    @Test
    void theAngleMayBeWrittenAsTheTurnOfTheLine() {
        LoadedItem block = RigText.items(BLOCK, "{ gear = \"b\", as = \"block\", turn_deg = 60 }")
                .get(0);

        assertNumber("1", block.multiple());
    }

    @Test
    void anAngleAbove150DegreesIsRejected() {
        for (String angle : List.of("angle_between_lines_deg = 150.1", "turn_deg = 29.9")) {
            String text = RigText.of(BLOCK, "{ gear = \"b\", as = \"block\", " + angle + " }");

            var wrong = assertThrows(ConfigException.class, () -> Rig.parse("rig.toml", text));

            assertTrue(wrong.getMessage().contains("150 degrees"), wrong.getMessage());
        }
        assertEquals(
                1,
                RigText.items(BLOCK, "{ gear = \"b\", as = \"block\", turn_deg = 30 }")
                        .size());
    }

    @Test
    void ropeAndWebChokersShrinkWithTheAngleAsAsmeB309Says() {
        for (CSVRecord row : ReferenceTable.rows("choke_angle_factors")) {
            for (String end : List.of("angle_from_deg", "angle_to_deg")) {
                String item = "{ gear = \"s\", as = \"choker\", choke_angle_deg = " + row.get(end) + " }";

                LoadedItem choker = RigText.items(STRAP, item).get(0);

                BigDecimal factor = new BigDecimal(row.get("fraction_of_choker_rating"));
                assertNumber(factor.multiply(new BigDecimal("15000")).toString(), choker.allowedNewtons());
                assertFalse(choker.allowedIsAtMost());
            }
        }
        // between the printed rows the lower one counts
        String between = "{ gear = \"s\", as = \"choker\", choke_angle_deg = 119.5 }";
        assertNumber("13050", RigText.items(STRAP, between).get(0).allowedNewtons());
    }

    @Test
    void aChainChokedBelow120DegreesHasOnlyAnUpperBound() {
        Hookup sharp = RigText.hookup(CHAIN, "{ gear = \"c\", as = \"choker\", choke_angle_deg = 119.9 }");
        Hookup wide = RigText.hookup(CHAIN, "{ gear = \"c\", as = \"choker\", choke_angle_deg = 120 }");

        assertNumber("7500", sharp.limit().newtons());
        assertTrue(sharp.limit().isAtMost());
        assertNumber("7500", wide.limit().newtons());
        assertFalse(wide.limit().isAtMost());
    }

    @Test
    void aWrittenFactorSettlesASharpChainChoker() {
        Hookup hookup = RigText.hookup(CHAIN, "{ gear = \"c\", as = \"choker\", choke_angle_deg = 60, factor = 0.5 }");

        assertNumber("5000", hookup.limit().newtons());
        assertFalse(hookup.limit().isAtMost());
    }

    @Test
    void anUnratedChokerMakesTheLimitAtMostEvenWhenAnotherItemGoverns() {
        String weak = RigText.gear("w", "web", "wll = \"1 kN\"");

        Hookup hookup = RigText.hookup(
                CHAIN + weak, "{ gear = \"w\" }, { gear = \"c\", as = \"choker\", choke_angle_deg = 45 }");

        assertEquals("w", hookup.limit().governing());
        assertTrue(hookup.limit().isAtMost());
    }

    @Test
    void aChokerWithoutAnAngleIsAssumedWideAndSaysSo() {
        LoadedItem choker =
                RigText.items(CHAIN, "{ gear = \"c\", as = \"choker\" }").get(0);

        assertNumber("7500", choker.allowedNewtons());
        assertFalse(choker.allowedIsAtMost());
        assertTrue(String.join(" ", choker.notes()).contains("assumed ≥ 120°"));
    }

    @Test
    void ofEqualItemsTheFirstListedGoverns() {
        String twin = RigText.gear("d", "chain", "wll = \"10.000 kN\"");

        assertEquals(
                "d",
                RigText.hookup(CHAIN + twin, "{ gear = \"d\" }, { gear = \"c\" }")
                        .limit()
                        .governing());
        assertEquals(
                "c",
                RigText.hookup(CHAIN + twin, "{ gear = \"c\" }, { gear = \"d\" }")
                        .limit()
                        .governing());
    }

    @Test
    void aMovingBlockDoublesWhatHangsBehindItAndNotTheWinchLine() {
        List<LoadedItem> items = RigText.items(
                BLOCK + STRAP + CHAIN + ROPE,
                "{ gear = \"r\" }, { gear = \"b\", as = \"moving-block\" },"
                        + " { gear = \"s\", as = \"block-strap\", hitch = \"straight\" }, { gear = \"c\", as = \"choker\" }");

        assertNumber("1", items.get(0).multiple());
        assertNumber("2", items.get(1).multiple());
        assertNumber("2", items.get(2).multiple());
        assertNumber("2", items.get(3).multiple());
        assertNumber("3750", Limit.of(items).newtons());
    }

    @Test
    void atTheDeadEndTheSheaveHidesSomeOfTheWinchesPull() {
        // the line's tension is measured beyond the sheave: the winch's part carries T / 0.96
        String text = RigText.of(
                BLOCK + CHAIN + ROPE + "[cell]\nat = \"dead-end\"\n",
                "{ gear = \"r\" }, { gear = \"b\", as = \"moving-block\" }, { gear = \"c\" }");

        List<LoadedItem> items = Rigs.parsed(text).hookups().get(0).items();

        assertEquals(1 / 0.96, items.get(0).multiple().doubleValue(), 1e-15);
        assertEquals(1 + 1 / 0.96, items.get(1).multiple().doubleValue(), 1e-15);
        assertEquals(1 + 1 / 0.96, items.get(2).multiple().doubleValue(), 1e-15);
    }

    @Test
    void aRopeBehindAMovingBlockMustSayWhatItIs() {
        String items = "{ gear = \"b\", as = \"moving-block\" }, { gear = \"r\" }";

        var wrong = assertThrows(ConfigException.class, () -> Rig.parse("rig.toml", RigText.of(BLOCK + ROPE, items)));

        assertEquals(1, wrong.problems().size(), wrong.getMessage());
        assertTrue(wrong.getMessage().contains("h.items.r.as: is missing"), wrong.getMessage());
        assertTrue(wrong.getMessage().contains("Write as = \"straight\""), wrong.getMessage());
    }

    @Test
    void aSecondRopeMustSayWhatItIs() {
        String sling = RigText.gear("t", "rope", "wll = \"12 kN\"\ntermination = 1.0");

        var wrong = assertThrows(
                ConfigException.class,
                () -> Rig.parse("rig.toml", RigText.of(ROPE + sling, "{ gear = \"r\" }, { gear = \"t\" }")));

        assertEquals(1, wrong.problems().size(), wrong.getMessage());
        assertTrue(wrong.getMessage().contains("h.items.t.as: is missing"), wrong.getMessage());
        String stated = "{ gear = \"r\" }, { gear = \"t\", as = \"straight\" }";
        assertNumber("1", RigText.items(ROPE + sling, stated).get(1).multiple());
    }

    @Test
    void aStraightRopeBehindAMovingBlockCarriesBothPartsAndIsRatedAsASling() {
        // 49 CFR 393.108, wire rope: 1/2 in, 5,300 lbf of 4.4482216152605 N
        String rope = RigText.gear("t", "rope", "diameter = \"1/2 in\"\nbreaking_force = \"80 kN\"\ntermination = 1.0");
        String marked = RigText.gear("u", "rope", "wll = \"12 kN\"\nbreaking_force = \"80 kN\"\ntermination = 1.0");

        List<LoadedItem> items = RigText.items(
                BLOCK + ROPE + rope + marked,
                "{ gear = \"r\" }, { gear = \"b\", as = \"moving-block\" }, { gear = \"t\", as = \"straight\" },"
                        + " { gear = \"u\", as = \"straight\" }");

        assertNumber("40000", items.get(0).allowedNewtons());
        assertNumber("2", items.get(2).multiple());
        assertNumber("23575.57456088065", items.get(2).allowedNewtons());
        assertNumber("2", items.get(3).multiple());
        assertNumber("12000", items.get(3).allowedNewtons());
    }

    @Test
    void eachSheaveBetweenDeadEndAndWinchAddsToWhatIsOnTheWinchesSide() {
        // statics; 0.96 a sheave: common practice, no source. Sheaves from the dead end: moving block, then fixed block
        String text = RigText.of(
                BLOCK + STRAP + CHAIN + ROPE + RigText.gear("m", "block", "wll = \"80 kN\"")
                        + "[cell]\nat = \"dead-end\"\n",
                "{ gear = \"r\" }, { gear = \"b\", as = \"block\", angle_between_lines_deg = 60 },"
                        + " { gear = \"s\", as = \"block-strap\", hitch = \"straight\", angle_between_lines_deg = 60 },"
                        + " { gear = \"c\" }, { gear = \"m\", as = \"moving-block\" }, { gear = \"c\" }");

        List<LoadedItem> items = Rigs.parsed(text).hookups().get(0).items();

        double winchSide = 1 / (0.96 * 0.96);
        double[] expected = {
            winchSide, Math.sqrt(3) * winchSide, Math.sqrt(3) * winchSide, winchSide, 1 + 1 / 0.96, 1 + 1 / 0.96
        };
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], items.get(i).multiple().doubleValue(), 1e-15, "item " + i);
        }
    }

    @Test
    void aBlockListedBehindAMovingBlockTurnsBothPartsPull() {
        LoadedItem block = RigText.items(
                        BLOCK, "{ gear = \"b\", as = \"moving-block\" }, { gear = \"b\", as = \"block\" }")
                .get(1);

        assertNumber("4", block.multiple());
    }

    @Test
    void aStrapNeedsItsHitchAndABasketCountsOneLegUnlessWritten() {
        String item = "{ gear = \"s\", as = \"block-strap\", hitch = \"basket\"";

        assertNumber("20000", RigText.items(STRAP, item + " }").get(0).allowedNewtons());
        assertNumber(
                "32000", RigText.items(STRAP, item + ", factor = 1.6 }").get(0).allowedNewtons());
        String without = RigText.of(STRAP, "{ gear = \"s\", as = \"block-strap\" }");
        var wrong = assertThrows(ConfigException.class, () -> Rig.parse("rig.toml", without));
        assertTrue(wrong.getMessage().contains("h.items.s.hitch: is missing"), wrong.getMessage());
    }

    @Test
    void bandsArePassedAboveTheirFigureAndNotAtIt() {
        Hookup hookup = RigText.hookup(CHAIN, "{ gear = \"c\" }");

        assertEquals(Optional.empty(), hookup.band(new BigDecimal("10000")));
        assertEquals(Optional.of(Band.PAST_WLL), hookup.band(new BigDecimal("10000.001")));
        assertEquals(Optional.of(Band.PAST_WLL), hookup.band(new BigDecimal("20000")));
        assertEquals(Optional.of(Band.PAST_PROOF), hookup.band(new BigDecimal("20000.001")));
        assertEquals(Optional.of(Band.PAST_PROOF), hookup.band(new BigDecimal("40000")));
        assertEquals(Optional.of(Band.PAST_BREAKING), hookup.band(new BigDecimal("40000.001")));
    }

    @Test
    void theBandIsTheWorstOverAllItemsAndUnknownFiguresTakeNoPart() {
        Hookup hookup = RigText.hookup(BLOCK + STRAP, "{ gear = \"b\", as = \"block\" }, { gear = \"s\" }");

        // block: 2 · 60 kN is past its 80 kN and nothing more is known; strap: past 20 kN, breaks at 100 kN
        assertEquals(Optional.of(Band.PAST_WLL), hookup.band(new BigDecimal("60000")));
        assertEquals(Optional.of(Band.PAST_BREAKING), hookup.band(new BigDecimal("100001")));
        assertEquals("past-breaking", Band.PAST_BREAKING.word());
    }

    @Test
    void aCellAtTheFairleadTurnsItsReadingIntoTheLinesTension() {
        String cell =
                "[cell]\nat = \"fairlead\"\ncapacity = \"60 kN\"\nangle_between_lines_deg = 90\nangle_plus_minus_deg = 5\n";

        Rig rig = Rigs.parsed(RigText.of(CHAIN + cell, "{ gear = \"c\" }"));

        // 60 kN / √2; at 95° 2 cos 47.5° is 1.35118, 1.41421 / 1.35118 − 1 = 4.67 %
        assertEquals(42426.4068711928, rig.cellCapacityNewtons().orElseThrow().doubleValue(), 1e-9);
        assertEquals(0.0467, rig.cell().orElseThrow().angleUncertainty(), 0.00005);
        LoadedItem item = rig.hookups().get(0).items().get(1);
        assertEquals("cell", item.gear());
        assertEquals(Math.sqrt(2), item.multiple().doubleValue(), 1e-15);
    }

    @Test
    void atFullPullTheHookupSaysWhatIsOverloadedAndWhatBreaksFirst() {
        Hookup hookup = RigText.hookup(
                CHAIN + ROPE + BLOCK, "{ gear = \"r\" }, { gear = \"b\", as = \"block\" }, { gear = \"c\" }");

        FullPull full = new FullPull(new BigDecimal("40000"), hookup);

        assertEquals(
                List.of("c"), full.overloaded().stream().map(LoadedItem::gear).toList());
        assertEquals("c", full.breaksFirst().orElseThrow().gear());
        assertEquals(
                List.of("b"),
                full.ofUnknownStrength().stream().map(LoadedItem::gear).toList());
    }

    @Test
    void aChokerStrongerThanTheRopeIsNamedAndAnUnknownOneIsNotCalledSafe() {
        String strong = RigText.gear("c", "chain", "wll = \"40 kN\"");
        String unknown = RigText.gear("o", "other", "wll = \"10 kN\"");

        FullPull full = new FullPull(
                new BigDecimal("40000"),
                RigText.hookup(
                        ROPE + strong + unknown,
                        "{ gear = \"r\" }, { gear = \"c\", as = \"choker\" }, { gear = \"o\", as = \"choker\" }"));

        assertEquals(
                List.of("c"),
                full.chokersThatOutlastTheRope().stream().map(LoadedItem::gear).toList());
        assertEquals(
                List.of("o"),
                full.chokersThatMayOutlastTheRope().stream()
                        .map(LoadedItem::gear)
                        .toList());
    }
}
