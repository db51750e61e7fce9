package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.Test;

class BlockTest {
    private static int crc(byte[] bytes) {
        CRC32C crc = new CRC32C();
        crc.update(bytes);
        return (int) crc.getValue();
    }

    /** Source: RFC 3720, appendix B.4, "CRC Examples"; the RFC lists the bytes in the order sent, lowest first. */
    @Test
    void checksumIsThatOfRfc3720() {
        byte[] ones = new byte[32];
        java.util.Arrays.fill(ones, (byte) 0xFF);
        byte[] rising = new byte[32];
        byte[] falling = new byte[32];
        for (int i = 0; i < 32; i++) {
            rising[i] = (byte) i;
            falling[i] = (byte) (31 - i);
        }
        assertEquals(0x8A9136AA, crc(new byte[32]));
        assertEquals(0x62A8AB43, crc(ones));
        assertEquals(0x46DD794E, crc(rising));
        assertEquals(0x113FDB5C, crc(falling));
    }

    /** Source: FIPS 180-2, appendix B.1, the message "abc". */
    @Test
    void hashIsThatOfFips180() {
        byte[] hash = Chain.sha256().digest("abc".getBytes(StandardCharsets.US_ASCII));
        assertEquals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Chain.hex(hash));
    }

    @Test
    void hasTheBytesThatThePageSays() {
        ByteWriter content = new ByteWriter();
        content.u8(0xAB);
        Block block = Block.of(Block.Kind.EVENTS, 3, 7, -2, 9, content);
        String head = "544c4201" + "04" + "01" + "0000" + "03000000" + "07000000" + "feffffffffffffff" + "09000000"
                + "01000000" + "ab";
        byte[] bytes = block.bytes();
        assertEquals(head, HexFormat.of().formatHex(bytes, 0, bytes.length - 4));
        byte[] covered = java.util.Arrays.copyOf(bytes, bytes.length - 4);
        assertEquals(crc(covered), new ByteReader(bytes, bytes.length - 4, bytes.length).i32());
    }

    @Test
    void readsItselfBackAndNoticesEveryFlippedBit() throws DamagedBlockException {
        ByteWriter content = new ByteWriter();
        content.text("what happened");
        byte[] bytes = Block.of(Block.Kind.EVENTS, 1, 2, 3, 4, content).bytes();
        assertArrayEquals(bytes, Block.read(bytes, 0).bytes());
        for (int bit = 0; bit < bytes.length * 8; bit++) {
            byte[] flipped = bytes.clone();
            flipped[bit / 8] ^= (byte) (1 << (bit % 8));
            assertThrows(DamagedBlockException.class, () -> Block.read(flipped, 0), "bit " + bit);
        }
    }

    @Test
    void noticesEveryTruncation() {
        ByteWriter content = new ByteWriter();
        content.text("what happened");
        byte[] bytes = Block.of(Block.Kind.EVENTS, 1, 2, 3, 4, content).bytes();
        for (int length = 0; length < bytes.length; length++) {
            byte[] cut = java.util.Arrays.copyOf(bytes, length);
            assertThrows(DamagedBlockException.class, () -> Block.read(cut, 0), "length " + length);
        }
    }

    /** Measured: 65,536 equal seconds in columns are 47 kB and take 12 MB to read. */
    @Test
    void refusesMoreEntriesThanItsKindMayHave() throws DamagedBlockException {
        for (Block.Kind kind : Block.Kind.values()) {
            int most = kind == Block.Kind.SECONDS ? 65_536 : 1_048_576;
            assertEquals(most, Block.read(withCount(kind, most), 0).count());
            for (int count : new int[] {most + 1, Integer.MAX_VALUE, -1}) {
                DamagedBlockException refused = assertThrows(
                        DamagedBlockException.class, () -> Block.read(withCount(kind, count), 0), kind + " " + count);
                assertTrue(String.valueOf(refused.getMessage()).contains(count + " entries"), refused::toString);
            }
        }
        byte[] columns = Block.ofColumns(1, 2, 65_537, new ByteWriter()).bytes();
        assertThrows(DamagedBlockException.class, () -> Block.read(columns, 0));
    }

    private static byte[] withCount(Block.Kind kind, int count) {
        return Block.of(kind, 1, 2, 3, count, new ByteWriter()).bytes();
    }
}
