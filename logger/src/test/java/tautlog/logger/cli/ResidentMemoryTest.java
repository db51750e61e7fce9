package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.logger.cli.ResidentMemory.Halves;

class ResidentMemoryTest {
    @Test
    void comparesTheHalvesBehindTheFirstQuarter() {
        Halves halves =
                Halves.of(List.of(9_999L << 10, 1L << 10, 3L << 10, 5L << 10, 2L << 10, 6L << 10, 7L << 10, 4L << 10));

        assertEquals(new Halves(5, 7), halves);
        assertEquals(2, halves.moreMegabytes());
    }
}
