package tautlog.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class TimeSpanTest {
    @Test
    void readsEveryUnitExactly() {
        assertEquals(0, new BigDecimal("0.3").compareTo(TimeSpan.parse("300 ms").seconds()));
        assertEquals(new BigDecimal("0.3"), TimeSpan.parse("0.3 s").seconds());
        assertEquals(new BigDecimal("180"), TimeSpan.parse("3 min").seconds());
        assertEquals(new BigDecimal("3600"), TimeSpan.parse("1 h").seconds());
    }

    @Test
    void whatIsNoTimeIsRefused() {
        assertThrows(QuantityException.class, () -> TimeSpan.parse("3"));
        assertThrows(QuantityException.class, () -> TimeSpan.parse("0 s"));
        assertThrows(QuantityException.class, () -> TimeSpan.parse("3 d"));
    }
}
