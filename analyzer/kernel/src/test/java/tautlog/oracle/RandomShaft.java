package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tautlog.sample.Instrument;

/**
 * SHAFT frames of a random outing. Turns take 630, 693, 770 or 990 parts, so that a speed is exactly 1.1, 0.9 or 0.7 times
 * another (693/630, 693/770, 693/990), or just one second, or one tick off.
 */
final class RandomShaft {
    private static final int[] PARTS = {693, 693, 693, 630, 770, 990, 1400, 5000};
    private static final int MOST_FRAMES = 300;

    private final Random random;
    private final Instrument instrument;
    private final List<OutingData.ShaftFrame> frames = new ArrayList<>();
    private final List<Long> sinceFrame = new ArrayList<>();
    private final long second;
    private final long part;
    private long pulses;
    private long nextPulse;
    private long interval;
    private long segmentUntil;

    RandomShaft(Random random, Instrument instrument) {
        this.random = random;
        this.instrument = instrument;
        second = instrument.tickHz();
        int turnsPerSecond = 5 + random.nextInt(10);
        int ppr = Math.max(1, instrument.pulsesPerRevolution());
        part = Math.max(1, second / 693 / turnsPerSecond / ppr);
        pulses = random.nextInt(2) * 6_000_000_000L;
    }

    /** Frames from a little before the first sample to a little after the last one. */
    List<OutingData.ShaftFrame> frames(List<OutingData.Frame> tension) {
        if (tension.isEmpty() || random.nextInt(5) == 0) {
            return frames;
        }
        long first = tension.get(0).tick();
        OutingData.Frame lastFrame = tension.get(tension.size() - 1);
        long samples = lastFrame.counts().size();
        long last = lastFrame.tick() + samples * second * 1_000 / instrument.rateMillihertz();
        long tick = Math.max(0, first + (random.nextInt(3) - 1) * random.nextInt((int) second * 3));
        nextPulse = tick;
        segmentUntil = tick;
        while (tick < last + second && frames.size() < MOST_FRAMES) {
            frame(tick);
            tick += step();
        }
        return frames;
    }

    private long step() {
        return switch (random.nextInt(40)) {
            case 0 -> second / 20;
            case 1 -> second / 20 - 1;
            case 2 -> random.nextInt((int) second * 3);
            case 3 -> second / 50;
            default -> second / 10;
        };
    }

    private void frame(long tick) {
        while (nextPulse <= tick) {
            if (interval > 0) {
                sinceFrame.add(nextPulse);
                pulses++;
            }
            nextPulse += interval > 0 ? interval : Math.max(1, second / 10);
            if (nextPulse > segmentUntil) {
                changeSpeed();
            }
        }
        int most = random.nextInt(60) == 0 ? random.nextInt(3) : 60;
        List<Long> listed = sinceFrame.subList(Math.max(0, sinceFrame.size() - most), sinceFrame.size());
        // now and then a whole frame is lost
        if (random.nextInt(60) > 0) {
            frames.add(new OutingData.ShaftFrame(tick, pulses, listed));
        }
        sinceFrame.clear();
    }

    private void changeSpeed() {
        int ppr = Math.max(1, instrument.pulsesPerRevolution());
        segmentUntil = nextPulse + random.nextInt((int) second * 3);
        interval = switch (random.nextInt(8)) {
            case 0 -> 0;
            case 1 -> second / ppr - 1 + random.nextInt(3);
            case 2 -> PARTS[random.nextInt(PARTS.length)] * part - 1 + random.nextInt(3);
            default -> PARTS[random.nextInt(PARTS.length)] * part;
        };
        interval = Math.max(0, interval);
    }
}
