package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.Tally;

/**
 * An instrument that starts several times, over a line that loses, repeats and damages frames: every sample that is told
 * is told once, in order, in the outing of its boot, and every frame is accounted for.
 */
class AssemblerDamageTest {
    private static final int SAMPLES = 5;
    private static final int TICKS = 2_000;

    /**
     * The first boot wraps; the second looks like a pause of 700 s, the third like a step of more than 2³⁰ ticks. They are far
     * apart: a frame of one boot, repeated in the 2 s of counter before the next one's HELLO, could not be told from that one's.
     */
    private static final long[] FIRST_TICKS = {-300_000, 700_000_000, -1_500_000_000};

    /** What the instrument measures: each boot and number has its own count. */
    private static int count(long boot, long number) {
        return (int) (boot * 1_000_003 + number * 7) & 0x7f_ffff;
    }

    /** The frames of three boots: a HELLO each ten frames, TENSION and SHAFT, ticks and numbers that wrap. */
    private static List<byte[]> frames(Random random) {
        List<byte[]> frames = new ArrayList<>();
        FrameEncoder encoder = new FrameEncoder();
        byte[] out = new byte[FrameEncoder.LONGEST_FRAME];
        for (int boot = 1; boot <= 3; boot++) {
            Instrument instrument = new Instrument("TL-1", 1, 0, boot, 1_000_000, 500_000, 8_388_607, 6);
            long tick = FIRST_TICKS[boot - 1] + random.nextInt(1_000);
            long number = random.nextInt(4) == 0 ? -100 : 0;
            int seq = 0;
            for (int i = 0; i < 60; i++, number += SAMPLES, tick += SAMPLES * TICKS) {
                if (i % 10 == 0) {
                    frames.add(Arrays.copyOf(out, encoder.hello(out, 0, seq++, instrument, tick - 1)));
                }
                int[] counts = new int[SAMPLES];
                for (int k = 0; k < SAMPLES; k++) {
                    counts[k] = count(boot, (number + k) & 0xffff_ffffL);
                }
                frames.add(Arrays.copyOf(out, encoder.tension(out, 0, seq++, tick, number, 0, counts, 0, SAMPLES)));
                if (i % 3 == 0) {
                    frames.add(Arrays.copyOf(out, encoder.shaft(out, 0, seq++, tick + 7, i, new int[0], 0)));
                }
            }
        }
        return frames;
    }

    /** Loses one frame in ten, flips a bit in one in ten, sends one in ten twice. */
    private static byte[] overABadLine(List<byte[]> frames, Random random) {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (byte[] frame : frames) {
            int fate = random.nextInt(10);
            byte[] sent = frame.clone();
            if (fate == 0) {
                continue;
            }
            if (fate == 1) {
                sent[random.nextInt(sent.length - 1)] ^= (byte) (1 << random.nextInt(8));
            }
            line.writeBytes(sent);
            if (fate == 2) {
                line.writeBytes(sent);
            }
        }
        return line.toByteArray();
    }

    private static long bootsThatSaidSo(List<String> good) {
        return good.stream()
                .filter(said -> said.startsWith("hello"))
                .map(said -> said.replaceAll(".*boot=(\\d+).*", "$1"))
                .distinct()
                .count();
    }

    @Property(tries = 2_000)
    void tellsEverySampleOnceInOrderAndInTheOutingOfItsBoot(@ForAll long seed) {
        Random random = new Random(seed);
        byte[] line = overABadLine(frames(random), random);
        List<String> good = new ArrayList<>(FrameText.of(line));
        good.removeIf(said -> said.startsWith("BAD") || said.startsWith("TOO") || said.startsWith("UN"));
        Told told = new Told();
        OutingAssembler assembler = new OutingAssembler(told);

        FrameDecoder decoder = new FrameDecoder();
        for (int at = 0; at < line.length; at += 97) {
            assembler.arriving(at * 1_000L);
            decoder.feed(line, at, Math.min(97, line.length - at), assembler);
        }
        assembler.end();

        // a boot none of whose HELLOs arrives has no outing: when it is the last, the assembler alone tells of it
        Tally untold = assembler.counts().tally();
        // frames of a boot that never said which it is can look like those of the boot before, after a gap: the wire's
        // own limit
        if (bootsThatSaidSo(good) == 3) {
            assertEquals(List.of(), told.wrong);
        }
        assertEquals(good.size(), told.frames + told.repeated + told.heldInVain + untold.heldFrames());
        assertEquals(PlainReader.pieces(line).size(), good.size() + told.rejected + untold.rejectedFrames());
        assertTrue(told.outings <= 3);
    }

    @Property(tries = 200)
    void losesNoFrameThatArrivesWhenEachFrameMayComeTwice(@ForAll long seed) {
        Random random = new Random(seed);
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        List<byte[]> frames = frames(random);
        for (byte[] frame : frames) {
            line.writeBytes(frame);
            if (random.nextInt(3) == 0) {
                line.writeBytes(frame);
            }
        }
        Told told = new Told();
        OutingAssembler assembler = new OutingAssembler(told);

        new FrameDecoder().feed(line.toByteArray(), 0, line.size(), assembler);
        assembler.end();

        assertEquals(List.of(), told.wrong);
        assertEquals(frames.size(), told.frames);
        // a boot's last frame, repeated, waits for a HELLO that never comes
        assertEquals(PlainReader.pieces(line.toByteArray()).size() - frames.size(), told.repeated + told.heldInVain);
        assertTrue(told.heldInVain <= 2);
        assertEquals(3, told.outings);
        assertEquals(0, told.lostFrames + told.rejected);
    }

    /** Checks each call as it comes and counts frames. */
    private static final class Told extends QuietEvidence implements OutingSink {
        final List<String> wrong = new ArrayList<>();
        int outings;
        int frames;
        long repeated;
        long heldInVain;
        long rejected;
        long lostFrames;
        private long boot;
        private long nextNumber;
        private long lastTick;
        private Tally last = Tally.NONE;

        @Override
        public Evidence begin(Instrument instrument, long firstTick) {
            outings++;
            boot = instrument.boot();
            nextNumber = Long.MIN_VALUE;
            lastTick = Long.MIN_VALUE;
            return this;
        }

        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            frames++;
            if (number < nextNumber || tick < lastTick) {
                wrong.add("order: number " + number + " tick " + tick);
            }
            for (int k = 0; k < n; k++) {
                if (counts[from + k] != count(boot, (number + k) & 0xffff_ffffL)) {
                    wrong.add("boot " + boot + " number " + (number + k));
                }
            }
            nextNumber = number + n;
            lastTick = tick;
        }

        @Override
        public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
            frames++;
        }

        @Override
        public void now(long tick) {
            frames++;
        }

        @Override
        public void tally(Tally tally) {
            last = tally;
        }

        @Override
        public void end() {
            repeated += last.repeatedFrames();
            heldInVain += last.heldFrames();
            rejected += last.rejectedFrames();
            lostFrames += last.lostFrames();
            last = Tally.NONE;
        }

        @Override
        public void firstSample(long tick) {}

        @Override
        public void selector(long atNumber, int position) {}

        @Override
        public void ended(long tick) {}
    }
}
