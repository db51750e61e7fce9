package tautlog.logger.wire;

import java.util.Arrays;
import java.util.Random;
import tautlog.sample.Instrument;

/** Makes frames with values from all over their ranges; the same seed gives the same frames. */
final class RandomFrames {
    private final Random random;
    private final FrameEncoder encoder = new FrameEncoder();
    private final byte[] out = new byte[FrameEncoder.LONGEST_FRAME];

    RandomFrames(long seed) {
        random = new Random(seed);
    }

    /** A frame of any kind, right in everything. */
    byte[] next() {
        int seq = random.nextInt(256);
        long tick = Integer.toUnsignedLong(random.nextInt());
        int end = switch (random.nextInt(5)) {
            case 0 -> encoder.hello(out, 0, seq, instrument(), tick);
            case 1 -> tension(seq, tick);
            case 2 -> shaft(seq, tick);
            case 3 ->
                encoder.health(
                        out, 0, seq, tick, random.nextInt(65_536), random.nextInt(65_536) - 32_768, random.nextInt());
            default -> encoder.input(out, 0, seq, tick, random.nextInt(256), random.nextInt(256), random.nextInt(256));
        };
        return Arrays.copyOf(out, end);
    }

    /** A frame whose checksum is right, with a kind, length and bytes that may be anything. */
    byte[] nextNonsense() {
        byte[] payload = new byte[random.nextInt(249)];
        random.nextBytes(payload);
        int kind = random.nextInt(8);
        // mostly lengths and numbers near to what is right, so that every test is reached
        if (kind == 2 && payload.length >= 10) {
            payload[9] = (byte) ((payload.length - 10) / 3);
        } else if (kind == 3 && payload.length >= 9) {
            payload[8] = (byte) ((payload.length - 9) / 3);
            Arrays.fill(payload, 9, payload.length, (byte) random.nextInt(3));
        } else if (kind == 1 && payload.length >= 33) {
            nearlyHello(payload);
        } else if (kind == 4) {
            payload = Arrays.copyOf(payload, 11 + random.nextInt(3));
        } else if (kind == 5) {
            payload = Arrays.copyOf(payload, 6 + random.nextInt(3));
        }
        return Arrays.copyOf(out, encoder.raw(out, 0, kind, random.nextInt(256), payload));
    }

    private void nearlyHello(byte[] payload) {
        payload[0] = (byte) (1 + random.nextInt(20) / 19);
        Arrays.fill(payload, 3, 11, (byte) random.nextInt(128));
        Arrays.fill(payload, 3 + random.nextInt(9), 11, (byte) 0);
        LittleEndian.put(payload, 19, random.nextInt(4_400_000), 4);
        LittleEndian.put(payload, 23, random.nextInt(4_400_000), 4);
        LittleEndian.put(payload, 27, random.nextInt(), 4);
    }

    private Instrument instrument() {
        return new Instrument(
                "TL-000001".substring(random.nextInt(2), random.nextInt(8) + 1),
                random.nextInt(256),
                random.nextInt(256),
                Integer.toUnsignedLong(random.nextInt()),
                1_000 + random.nextInt(3_999_001),
                1_000 + random.nextInt(3_999_001),
                1 + random.nextInt(Integer.MAX_VALUE),
                random.nextInt(65_536));
    }

    private int tension(int seq, long tick) {
        int[] counts = random.ints(1 + random.nextInt(78), -0x80_0000, 0x80_0000)
                .map(count -> random.nextInt(3) == 0 ? 0 : count)
                .toArray();
        return encoder.tension(out, 0, seq, tick, random.nextInt(), random.nextInt(256), counts, 0, counts.length);
    }

    private int shaft(int seq, long tick) {
        int[] youngestFirst =
                random.ints(random.nextInt(61), 0, 0x100_0000).sorted().toArray();
        int[] ages = new int[youngestFirst.length];
        for (int i = 0; i < ages.length; i++) {
            ages[i] = youngestFirst[ages.length - 1 - i];
        }
        return encoder.shaft(out, 0, seq, tick, random.nextInt(), ages, ages.length);
    }
}
