package tautlog.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SampleTicksTest {
    @Test
    void comparesWithATickAsItsTicksDo() {
        Random random = new Random(1);
        SampleTicks ticks = new SampleTicks(new Instrument("T", 1, 0, 1, 1_000_000, 499_987, 8_388_607, 1));
        long number = 0;
        long tick = 5_000;
        for (int frame = 0; frame < 500; frame++) {
            int n = 1 + random.nextInt(80);
            ticks.frame(number, tick, n);
            for (int i = 0; i < 50; i++) {
                int k = random.nextInt(n);
                long near = ticks.tickOf(k) + random.nextInt(5) - 2;

                assertEquals(
                        ticks.tickOf(k) <= near,
                        SampleTicks.isAtOrBefore(k, near, tick, ticks.ticks(), ticks.samples()));
            }
            number += n;
            tick += n * 2_000L + random.nextInt(300) - 150;
        }
    }
}
