package tautlog.usage;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;

/** Held against the obvious: every sample by itself, every load worked out in decimal. */
class ShareMeterTest {
    private static final int RATE = 100;
    private static final Rig RIG = Rigs.parsed(Rigs.exampleText());
    private static final Calibration CALIBRATION = Calibration.of("-17.25", "3.7");

    private record Sample(long number, int count, String hookup) {}

    private final List<Sample> samples = new ArrayList<>();

    /** Frames of random lengths at random levels with gaps, open bridges and turns of the hookup, some of them inside a frame. */
    private void play(Random random, ShareMeter meter, boolean byBounds) {
        samples.clear();
        long number = random.nextInt(10);
        String hookup = RIG.assumed().id();
        for (int frame = 0; frame < 40; frame++) {
            int n = 1 + random.nextInt(60);
            long turnAt = number + n;
            String next = hookup;
            if (random.nextInt(4) == 0) {
                turnAt = number + random.nextInt(n);
                next = random.nextInt(5) == 0
                        ? "unheard-of"
                        : RIG.hookups().get(random.nextInt(2)).id();
                meter.hookup(turnAt, next, HookupSource.MARK);
            }
            boolean isOpen = random.nextInt(6) == 0;
            int[] counts = counts(random, n);
            give(meter, number, isOpen, counts, byBounds);
            for (int i = 0; i < n && !isOpen; i++) {
                samples.add(new Sample(number + i, counts[i], number + i >= turnAt ? next : hookup));
            }
            hookup = next;
            number += n + (random.nextInt(5) == 0 ? random.nextInt(50) : 0);
        }
    }

    private static int[] counts(Random random, int n) {
        int level = random.nextInt(12_000) - 500;
        int spread = random.nextInt(3) == 0 ? 6_000 : 5;
        int[] counts = new int[n];
        for (int i = 0; i < n; i++) {
            counts[i] = level + random.nextInt(spread);
        }
        return counts;
    }

    private static void give(ShareMeter meter, long number, boolean isOpen, int[] counts, boolean byBounds) {
        int n = counts.length;
        if (!byBounds || isOpen) {
            meter.tension(number, number, isOpen ? Evidence.FLAG_OPEN_BRIDGE : 0, counts, 0, n);
            return;
        }
        int least = java.util.Arrays.stream(counts).min().orElseThrow();
        int greatest = java.util.Arrays.stream(counts).max().orElseThrow();
        if (!meter.takeWhole(number, n, least, greatest)) {
            meter.take(number, counts, 0, n);
        }
    }

    private List<Long> obvious(String gear) {
        long[] above = new long[5];
        for (Sample sample : samples) {
            Hookup hookup = RIG.hookup(sample.hookup()).orElseGet(RIG::lowest);
            BigDecimal tension = CALIBRATION.exactNewtons(sample.count());
            List<LoadedItem> items = hookup.items().stream()
                    .filter(item -> item.gear().equals(gear))
                    .toList();
            above[4] += items.isEmpty() ? 0 : 1;
            for (int i = 0; i < 4; i++) {
                BigDecimal share = new BigDecimal(GearUse.SHARES.get(i));
                boolean isAbove = items.stream()
                        .anyMatch(item -> item.loadNewtons(tension)
                                        .compareTo(item.allowedNewtons().multiply(share))
                                > 0);
                above[i] += isAbove ? 1 : 0;
            }
        }
        return List.of(above[0], above[1], above[2], above[3], above[4]);
    }

    private static long samples(TimeSum time) {
        return time.unitsByMillihertz().getOrDefault(RATE * 1_000L, 0L);
    }

    @Property(tries = 100)
    void countsAsTheObviousDoes(@ForAll long seed, @ForAll boolean byBounds) {
        MachineMeter meter = new MachineMeter(Outings.atHertz(RATE).instrument(), RIG, CALIBRATION);
        play(new Random(seed), meter.samples(), byBounds);

        MachineUse use = meter.use(SampleClock.UNKNOWN);

        for (String gear : List.of("rope", "choker", "block-1", "strap-1", "cell")) {
            GearUse one = use.ofGear(gear);
            List<Long> counted = new ArrayList<>(
                    one.above().stream().map(ShareMeterTest::samples).toList());
            counted.add(samples(one.seen()));
            assertEquals(obvious(gear), counted, gear);
        }
    }

    @Property(tries = 30)
    void findsTheGreatestLoadOfEachPiece(@ForAll long seed) {
        MachineMeter meter = new MachineMeter(Outings.atHertz(RATE).instrument(), RIG, CALIBRATION);
        play(new Random(seed), meter.samples(), true);

        MachineUse use = meter.use(SampleClock.UNKNOWN);

        double strap = samples.stream()
                .filter(sample ->
                        RIG.hookup(sample.hookup()).orElseGet(RIG::lowest).id().equals("round-the-corner"))
                .mapToDouble(sample -> CALIBRATION.newtons(sample.count()) * Math.sqrt(3))
                .max()
                .orElse(Double.NaN);
        assertEquals(Double.isFinite(strap), use.ofGear("strap-1").loadNewtons().seen());
        if (Double.isFinite(strap)) {
            assertEquals(strap, use.ofGear("strap-1").loadNewtons().value(), 1e-6 * Math.abs(strap) + 1e-6);
        }
    }
}
