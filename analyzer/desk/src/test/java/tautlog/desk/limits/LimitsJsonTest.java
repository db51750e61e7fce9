package tautlog.desk.limits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;

class LimitsJsonTest {
    private static JsonObject document(Optional<String> hookup) {
        return JsonParser.parseString(LimitsJson.render(Rigs.parsed(Rigs.exampleText()), hookup))
                .getAsJsonObject();
    }

    private static JsonObject first(JsonObject parent, String list) {
        return parent.getAsJsonArray(list).get(0).getAsJsonObject();
    }

    @Test
    void theLimitIsGivenWithAllItsDigits() {
        JsonObject hookup = first(document(Optional.empty()), "hookups");

        // 4700 lbf · 0.75
        assertEquals(
                0,
                new BigDecimal("15679.9811937932625")
                        .compareTo(hookup.get("limit_n").getAsBigDecimal()));
        assertEquals("choker", hookup.get("governing").getAsString());
        assertFalse(hookup.get("limit_is_at_most").getAsBoolean());
        assertEquals("choker", hookup.get("breaks_first").getAsString());
        assertEquals(3, hookup.getAsJsonArray("items").size());
    }

    @Test
    void whatIsNotKnownIsNull() {
        JsonObject corner = first(document(Optional.of("round-the-corner")), "hookups");
        JsonObject block = corner.getAsJsonArray("items").get(1).getAsJsonObject();

        assertEquals("block-1", block.get("gear").getAsString());
        assertTrue(block.get("proof_n").isJsonNull());
        assertTrue(block.get("breaking_n").isJsonNull());
        assertTrue(first(document(Optional.empty()), "gear").get("serial").isJsonNull());
    }

    @Test
    void onlyTheHookupAskedForIsGiven() {
        assertEquals(
                1, document(Optional.of("straight")).getAsJsonArray("hookups").size());
        assertEquals(2, document(Optional.empty()).getAsJsonArray("hookups").size());
        assertEquals(1, document(Optional.empty()).get("schema").getAsInt());
    }
}
