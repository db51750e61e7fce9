package tautlog.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class TorqueTest {
    @Test
    void readsEveryUnitExactly() {
        assertEquals(new BigDecimal("1120"), Torque.parse("1120 N m").newtonMetres());
        assertEquals(
                0, new BigDecimal("1120").compareTo(Torque.parse("1.12 kN m").newtonMetres()));
        // 1 lbf · 0.3048 m
        assertEquals(
                0,
                new BigDecimal("1.3558179483314004")
                        .compareTo(Torque.parse("1 lbf ft").newtonMetres()));
        assertEquals(Torque.parse("7 N m"), Torque.parse(Torque.parse("7 Nm").toString()));
    }

    @Test
    void whatIsNoTorqueIsRefused() {
        assertThrows(QuantityException.class, () -> Torque.parse("1120 N"));
        assertThrows(QuantityException.class, () -> Torque.parse("0 N m"));
    }
}
