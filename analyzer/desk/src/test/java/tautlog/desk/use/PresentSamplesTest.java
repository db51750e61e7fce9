package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.FramesOfAPassage;
import tautlog.fixtures.FramesOfAPassage.Frame;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.SampleTicks;

/** Against all frames kept one by one, the plain form. */
class PresentSamplesTest {
    @Test
    void knowsWhenEverySampleWasHoweverEvenTheFramesAre() {
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            Instrument instrument = new Instrument("TL-1", 1, 0, 1, 1_000_000, 500_000, 8_388_607, 6);
            PresentSamples present = new PresentSamples(instrument);
            List<Frame> frames = new ArrayList<>();
            int unevenness = random.nextInt(4);
            long number = random.nextInt(1_000);
            long tick = random.nextInt(1_000_000);
            long meaningful = 0;
            int n = 25;
            List<Frame> together = new ArrayList<>();
            for (int i = 0; i < 200; i++) {
                n = random.nextInt(40) == 0 ? 1 + random.nextInt(50) : n;
                int flags = random.nextInt(20) == 0 ? Evidence.FLAG_OPEN_BRIDGE : 0;
                Frame frame = new Frame(number, tick, n);
                frames.add(frame);
                if (flags == 0) {
                    together.add(frame);
                }
                if (flags != 0 || random.nextInt(5) == 0) {
                    present.frames(new FramesOfAPassage(together));
                    together.clear();
                }
                if (flags != 0) {
                    present.frame(number, tick, flags, n);
                }
                meaningful += flags == 0 ? n : 0;
                int missing = random.nextInt(30) == 0 ? 1 + random.nextInt(100) : 0;
                number += n + missing;
                tick += 2_000L * (n + missing) + (unevenness == 0 ? 0 : random.nextInt(unevenness));
            }

            present.frames(new FramesOfAPassage(together));

            SampleTicks ticks = new SampleTicks(instrument);
            for (Frame frame : frames) {
                ticks.frame(frame.number(), frame.tick(), frame.n());
                for (int k = 0; k < frame.n(); k++) {
                    assertEquals(ticks.tickOf(k), present.tickOf(frame.number() + k), "seed " + seed);
                }
            }
            assertEquals(number - frames.get(0).number() - meaningful, present.missingUpTo(number - 1));
        }
    }
}
