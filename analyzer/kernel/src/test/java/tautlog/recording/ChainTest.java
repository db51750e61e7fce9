package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.security.MessageDigest;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Links against a plain reading of {@code analyzer/RECORDING.md}, "Chain": all bytes of a content in one row, hashed at once. */
class ChainTest {
    private final Random random = new Random(11);

    @ParameterizedTest
    @CsvSource({"1, 1", "1, 40000", "30, 25", "655, 25", "163, 100", "16384, 1", "3, 2042", "2, 2043"})
    void linksSamples(int frames, int length) throws Exception {
        FrameTable table = new FrameTable();
        int[] counts = new int[length];
        for (int frame = 0; frame < frames; frame++) {
            for (int i = 0; i < length; i++) {
                counts[i] = random.nextInt();
            }
            table.add(random.nextLong(), random.nextLong(), random.nextInt(), counts, 0, length);
        }
        ByteBuffer content = content(24L * frames + 4L * frames * length);
        for (int frame = 0; frame < frames; frame++) {
            content.putLong(table.number[frame]).putLong(table.tick[frame]);
            content.putInt(table.flags[frame]).putInt(length);
            for (int i = 0; i < length; i++) {
                content.putInt(table.counts[frame * length + i]);
            }
        }
        Chain chain = new Chain();
        chain.addSamples(3, 7, table);
        chain.addSamples(3, 7, table);
        assertArrayEquals(secondLink(2, table.number[0], frames * length, content), chain.link());
    }

    @ParameterizedTest
    @CsvSource({"1, 0", "1, 1", "340, 0", "4096, 3", "10, 1600"})
    void linksShaftFrames(int frames, int pulses) throws Exception {
        ShaftTable table = new ShaftTable();
        long[] ticks = new long[pulses];
        ByteBuffer content = content(24L * frames + 8L * frames * pulses);
        for (int frame = 0; frame < frames; frame++) {
            long tick = random.nextLong();
            long count = random.nextLong();
            content.putInt(frame).putLong(tick).putLong(count).putInt(pulses);
            for (int i = 0; i < pulses; i++) {
                ticks[i] = random.nextLong();
                content.putLong(ticks[i]);
            }
            table.add(tick, count, frame, ticks, 0, pulses);
        }
        Chain chain = new Chain();
        chain.addShaft(3, 7, table);
        chain.addShaft(3, 7, table);
        assertArrayEquals(secondLink(3, table.tick[0], frames, content), chain.link());
    }

    private static ByteBuffer content(long bytes) {
        return ByteBuffer.allocate((int) bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** The second link of a file whose first two rows are of outing 3, span 7 and hold the same. */
    private static byte[] secondLink(int kind, long first, int count, ByteBuffer content) throws Exception {
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        ByteBuffer linked = content(32 + 21 + 32);
        linked.position(32);
        linked.put((byte) kind).putInt(3).putInt(7).putLong(first).putInt(count);
        linked.put(digest.digest(content.array()));
        linked.rewind().put(digest.digest(linked.array()));
        return digest.digest(linked.array());
    }
}
