package tautlog.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;
import tautlog.fixtures.Rigs;
import tautlog.quantity.Length;

class RatingsTest {
    /** 1 lbf, exact. */
    private static final BigDecimal POUND = new BigDecimal("4.4482216152605");

    private static void assertNewtons(String pounds, BigDecimal newtons) {
        assertEquals(
                0, new BigDecimal(pounds).multiply(POUND).compareTo(newtons), pounds + " lb, was " + newtons + " N");
    }

    private static LoadedItem only(String gear, String items) {
        return RigText.items(gear, items).get(0);
    }

    @Test
    void everyChainOfTheTableIsRatedByItsPoundsInInchesAndNominalMillimetres() {
        List<CSVRecord> rows = ReferenceTable.rows("chain_wll_49cfr393_108");
        assertEquals(28, rows.size());
        for (CSVRecord row : rows) {
            for (String size : List.of(row.get("size_in") + " in", row.get("size_mm_nominal") + " mm")) {
                String gear = RigText.gear("c", "chain", "grade = " + row.get("grade") + "\nsize = \"" + size + "\"");

                LoadedItem item = only(gear, "{ gear = \"c\" }");

                assertNewtons(row.get("wll_lb"), item.allowedNewtons());
                assertTrue(item.notes().get(1).contains("tie-downs"), "says that the rating is borrowed");
            }
        }
    }

    @Test
    void everyWebOfTheTableIsRatedByItsPounds() {
        List<CSVRecord> rows = ReferenceTable.rows("webbing_wll_49cfr393_108");
        assertEquals(4, rows.size());
        for (CSVRecord row : rows) {
            String gear = RigText.gear("s", "web", "size = \"" + row.get("width_in") + " in\"");

            assertNewtons(row.get("wll_lb"), only(gear, "{ gear = \"s\" }").allowedNewtons());
        }
    }

    @Test
    void aRopeSlingIsRatedByTheTableAndRowsThatCouldNotBeCheckedAreNotUsed() {
        List<CSVRecord> rows = ReferenceTable.rows("wire_rope_wll_49cfr393_108");
        assertEquals(9, rows.size());
        for (CSVRecord row : rows) {
            String gear = RigText.gear("r", "rope", "diameter = \"" + row.get("diameter_in") + " in\"");
            String items = "{ gear = \"r\", as = \"straight\", termination = 1.0 }";
            if (row.get("status").equals("seen")) {
                assertNewtons(row.get("wll_lb"), only(gear, items).allowedNewtons());
            } else {
                assertThrows(ConfigException.class, () -> Rig.parse("rig.toml", RigText.of(gear, items)));
            }
        }
    }

    @Test
    void theWinchLineIsNeverRatedByTheTable() {
        String gear = RigText.gear("r", "rope", "diameter = \"3/8 in\"");

        var wrong =
                assertThrows(ConfigException.class, () -> Rig.parse("rig.toml", RigText.of(gear, "{ gear = \"r\" }")));

        assertTrue(wrong.getMessage().contains("breaking_force"), wrong.getMessage());
    }

    @Test
    void breakingForcesAreThoseOfApiSpec9aToThreeDigits() {
        List<CSVRecord> rows = ReferenceTable.rows("wire_rope_mbf_6x7fc_check");
        assertEquals(18, rows.size());
        for (CSVRecord row : rows) {
            for (int grade : new int[] {1770, 1960}) {
                BigDecimal published = new BigDecimal(row.get("Fmin_kN_grade" + grade + "_published"));

                BigDecimal force = RopeStrength.newtons("6x7 FC", Length.parse(row.get("d_mm") + " mm"), grade)
                        .movePointLeft(3);

                // half a unit of the third printed digit, and a little for prints that round a tie the other way
                double tolerance = 0.51 * Math.pow(10, published.precision() > 3 ? 0 : -published.scale());
                double unit = published.compareTo(new BigDecimal("1000")) >= 0 ? 10 * tolerance : tolerance;
                assertEquals(published.doubleValue(), force.doubleValue(), unit, row.toString());
            }
        }
    }

    @Test
    void breakingForcesOfWinchRopesAgreeWithAnIndependentComputation() {
        for (CSVRecord row : ReferenceTable.rows("wire_rope_mbf_winch_sizes_computed")) {
            Length diameter = Length.parse(row.get("d_mm") + " mm");
            int grade = Integer.parseInt(row.get("grade_Rr"));
            BigDecimal expected = new BigDecimal(row.get("Fmin_kN"));
            for (String construction : List.of("6x19 " + row.get("core"), "6x36 " + row.get("core"))) {
                BigDecimal force =
                        RopeStrength.newtons(construction, diameter, grade).movePointLeft(3);

                assertEquals(expected.doubleValue(), force.doubleValue(), 0.0051, row.toString());
            }
        }
    }

    @Test
    void factorsByConstructionAreThoseOfEn12385() {
        List<CSVRecord> rows = ReferenceTable.rows("wire_rope_kprime");
        assertEquals(rows.size(), RopeStrength.FACTORS.size());
        for (CSVRecord row : rows) {
            BigDecimal factor = RopeStrength.FACTORS.get(row.get("class") + " " + row.get("core"));

            assertEquals(0, new BigDecimal(row.get("K_prime")).compareTo(factor), row.toString());
        }
    }

    @Test
    void chainProofAndBreakingLoadsKeepTheRatiosOfEn818() {
        // EN 818-3 rounds its limits down to preferred numbers: breaking / limit is 4 or a little more, proof half of
        // breaking
        for (CSVRecord row : ReferenceTable.rows("chain_en818_3_grade4")) {
            BigDecimal proof = new BigDecimal(row.get("proof_force_kN"));
            BigDecimal breaking = new BigDecimal(row.get("breaking_force_kN"));
            String gear = RigText.gear("c", "chain", "wll = \"" + row.get("wll_t") + " t\"");

            LoadedItem item = only(gear, "{ gear = \"c\" }");

            double ourBreaking = item.breakingNewtons().orElseThrow().doubleValue() / 1000;
            double ourProof = item.proofNewtons().orElseThrow().doubleValue() / 1000;
            assertEquals(1.0, breaking.doubleValue() / ourBreaking, 0.06, row.toString());
            assertEquals(1.0, proof.doubleValue() / ourProof, 0.06, row.toString());
            assertTrue(ourBreaking <= breaking.doubleValue() * 1.001, "never above the standard's: " + row);
        }
    }

    @Test
    void grade70IsRatedAboveGrade80At516InAndIsNoLiftingChain() {
        String seventy = RigText.gear("c", "chain", "grade = 70\nsize = \"5/16 in\"");
        String eighty = RigText.gear("c", "chain", "grade = 80\nsize = \"5/16 in\"");

        LoadedItem a = only(seventy, "{ gear = \"c\" }");
        LoadedItem b = only(eighty, "{ gear = \"c\" }");

        assertTrue(a.allowedNewtons().compareTo(b.allowedNewtons()) > 0);
        assertTrue(a.notes().contains("Grade 70 is no lifting chain."));
    }

    @Test
    void aChainWithoutGradeIsGrade30AndSaysSo() {
        // 49 CFR 393.108(d)
        LoadedItem item = only(RigText.gear("c", "chain", "size = \"3/8 in\""), "{ gear = \"c\" }");

        assertNewtons("2650", item.allowedNewtons());
        assertTrue(String.join(" ", item.notes()).contains("taken as grade 30"));
    }

    @Test
    void gradeMarksAreReadAsTheyAreStamped() {
        for (String mark : List.of("7", "70", "700", "\"70\"")) {
            LoadedItem item =
                    only(RigText.gear("c", "chain", "grade = " + mark + "\nsize = \"3/8 in\""), "{ gear = \"c\" }");

            assertNewtons("6600", item.allowedNewtons());
        }
    }

    @Test
    void theMarkingGovernsOverTheTable() {
        // 49 CFR 393.108(b)
        LoadedItem item =
                only(RigText.gear("c", "chain", "grade = 70\nsize = \"5/16 in\"\nwll = \"12 kN\""), "{ gear = \"c\" }");

        assertEquals(0, new BigDecimal("12000").compareTo(item.allowedNewtons()));
        assertEquals("Rating: marking on the gear.", item.notes().get(0));
    }

    @Test
    void leastThicknessesAreThoseOfTheTableAndLieBetweenItsRowsForOtherSizes() {
        for (CSVRecord row : ReferenceTable.rows("chain_wear_limits_osha")) {
            Length size = Length.parse(row.get("chain_size_in") + " in");
            if (row.get("status").startsWith("min seen")) {
                BigDecimal least = ChainWear.leastMillimetres(size).orElseThrow();

                Length published = Length.parse(row.get("min_allowable_thickness_in") + " in");
                assertEquals(
                        0, published.millimetres().compareTo(least.setScale(9, RoundingMode.HALF_UP)), row.toString());
            } else {
                assertTrue(ChainWear.leastMillimetres(size).isEmpty(), "from memory, not used");
            }
        }
        assertEquals(
                0,
                new BigDecimal("6.35")
                        .compareTo(
                                ChainWear.leastMillimetres(Length.parse("8 mm")).orElseThrow()));
    }

    @Test
    void aWornChainIsOutOfServiceAndItsLimitOnlyAnUpperBound() {
        String worn = RigText.gear("c", "chain", "grade = 70\nsize = \"3/8 in\"\nlink_thickness = \"7.5 mm\"");

        Rig rig = Rigs.parsed(RigText.of(worn, "{ gear = \"c\" }"));

        // 19/64 in is 7.54 mm
        assertTrue(rig.gear().get(0).outOfService().orElseThrow().startsWith("Out of service"));
        assertTrue(rig.hookups().get(0).limit().isAtMost());
    }

    @Test
    void aMarkedDesignFactorGivesABreakingLoadToGearThatHasNone() {
        String shackle = RigText.gear("s", "shackle", "wll = \"2 t\"\nproof_factor = 2\ndesign_factor = 6");
        String plain = RigText.gear("s", "shackle", "wll = \"2 t\"");

        LoadedItem marked = only(shackle, "{ gear = \"s\" }");
        LoadedItem unmarked = only(plain, "{ gear = \"s\" }");

        assertEquals(
                0, new BigDecimal("117679.8").compareTo(marked.breakingNewtons().orElseThrow()));
        assertEquals(
                0, new BigDecimal("39226.6").compareTo(marked.proofNewtons().orElseThrow()));
        assertTrue(
                unmarked.breakingNewtons().isEmpty() && unmarked.proofNewtons().isEmpty());
    }

    @Test
    void webAndRopeSlingsBreakAtFiveTimesTheirLimit() {
        // ASME B30.9 practice
        LoadedItem web = only(RigText.gear("s", "web", "wll = \"20 kN\""), "{ gear = \"s\" }");
        LoadedItem rope = only(RigText.gear("r", "rope", "wll = \"20 kN\""), "{ gear = \"r\", as = \"choker\" }");

        assertEquals(0, new BigDecimal("100000").compareTo(web.breakingNewtons().orElseThrow()));
        assertEquals(0, new BigDecimal("75000").compareTo(rope.breakingNewtons().orElseThrow()));
        assertTrue(web.proofNewtons().isEmpty(), "no proof factor unless written");
    }

    @Test
    void theMarkedBreakingForceOfARopeGovernsOverItsConstruction() {
        String rope = RigText.gear(
                "r",
                "rope",
                "diameter = \"11 mm\"\nconstruction = \"6x36 IWRC\"\nwire_grade = 1960\nbreaking_force = \"80 kN\"\ntermination = \"swaged\"");

        LoadedItem item = only(rope, "{ gear = \"r\" }");

        assertEquals(0, new BigDecimal("40000").compareTo(item.allowedNewtons()));
        assertEquals(0, new BigDecimal("80000").compareTo(item.breakingNewtons().orElseThrow()));
    }
}
