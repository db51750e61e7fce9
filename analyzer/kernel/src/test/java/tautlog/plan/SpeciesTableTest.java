package tautlog.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tautlog.quantity.Density;

class SpeciesTableTest {
    private static final SpeciesTable TABLE = SpeciesTable.shipped();
    private static final double KILOGRAMS_PER_CUBIC_METRE =
            Density.parse("1 lb/ft3").kilogramsPerCubicMetre().doubleValue();

    /** Specific gravity, moisture and bark of each species as the Forest Service's table has them. */
    private static List<CSVRecord> source() throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader in = new InputStreamReader(
                SpeciesTableTest.class.getResourceAsStream("green_wood_density.csv"), StandardCharsets.UTF_8)) {
            return format.parse(in).getRecords();
        }
    }

    private static double pounds(Density density) {
        return density.kilogramsPerCubicMetre().doubleValue() / KILOGRAMS_PER_CUBIC_METRE;
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    @Test
    void everyRowFollowsFromTheSourcesGravityMoistureAndBark() throws IOException {
        List<CSVRecord> rows = source();
        assertEquals(rows.size(), TABLE.all().size());
        for (CSVRecord row : rows) {
            Species species = TABLE.named(row.get("scientific_name")).orElseThrow();
            double wood = number(row, "wood_sg_green_vol") * 62.4 * (1 + number(row, "wood_mc_green_pct") / 100);
            double bark = number(row, "bark_volume_pct_of_wood")
                    / 100
                    * number(row, "bark_sg_green_vol")
                    * 62.4
                    * (1 + number(row, "bark_mc_green_pct") / 100);

            assertEquals(row.get("common_name"), species.common());
            assertEquals(wood, pounds(species.wood()), 0.06, row.toString()); // the table has one decimal
            assertEquals(wood + bark, pounds(species.withBark()), 0.06, row.toString());
        }
    }

    /** Wood alone, and three figures with bark of which a second list has 59, 51 and 42. */
    @ParameterizedTest
    @CsvSource({
        "red maple, 50, 55.8",
        "sugar maple, 55, 65.0",
        "American beech, 54, 58.7",
        "balsam fir, 45, 51.0",
        "black spruce, 35, 41.5",
        "northern red oak, 64, 80.2"
    })
    void checkPointsStandInTheTable(String name, double wood, double withBark) {
        Species species = TABLE.named(name).orElseThrow();

        assertEquals(wood, pounds(species.wood()), 1e-9);
        assertEquals(withBark, pounds(species.withBark()), 1e-9);
    }

    @Test
    void aSpeciesIsFoundByEitherNameInAnyCase() {
        assertEquals(
                "Norway spruce", TABLE.named("  norway  SPRUCE ").orElseThrow().common());
        assertEquals("Norway spruce", TABLE.named("picea abies").orElseThrow().common());
        assertTrue(TABLE.named("spruce").isEmpty());
    }

    @Test
    void nearestAreThoseWithAWordInCommonAndTheOneThatIsMistyped() {
        assertEquals(List.of("red spruce", "white spruce", "black spruce", "Norway spruce"), TABLE.near("Spruce"));
        assertEquals("American beech", TABLE.near("Amercian beach").get(0));
        assertEquals(List.of(), TABLE.near("xylophone tree"));
    }

    @Test
    void theBarkIsNeverForgotten() {
        TABLE.all().forEach(s -> assertTrue(pounds(s.withBark()) > pounds(s.wood()), s.toString()));
    }
}
