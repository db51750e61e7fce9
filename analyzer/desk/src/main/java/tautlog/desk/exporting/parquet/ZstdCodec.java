package tautlog.desk.exporting.parquet;

import io.airlift.compress.zstd.ZstdCompressor;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import org.apache.parquet.bytes.BytesInput;
import org.apache.parquet.compression.CompressionCodecFactory;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;

/** Compresses pages with zstd in Java, without the native libraries and the Hadoop classes of the library's own codecs. */
final class ZstdCodec implements CompressionCodecFactory {
    @Override
    public BytesInputCompressor getCompressor(CompressionCodecName codec) {
        if (codec != CompressionCodecName.ZSTD) {
            throw new IllegalArgumentException("codec must be ZSTD, was " + codec);
        }
        return new Pages();
    }

    /** @throws UnsupportedOperationException always: nothing is read here */
    @Override
    public BytesInputDecompressor getDecompressor(CompressionCodecName codec) {
        throw new UnsupportedOperationException("Parquet files are written here, not read");
    }

    @Override
    public void release() {
        // nothing is held
    }

    private static final class Pages implements BytesInputCompressor {
        private final ZstdCompressor zstd = new ZstdCompressor();
        private byte[] room = new byte[0];

        @Override
        public BytesInput compress(BytesInput page) throws IOException {
            ByteArrayOutputStream collected = new ByteArrayOutputStream(Math.toIntExact(page.size()));
            page.writeAllTo(collected);
            byte[] plain = collected.toByteArray();
            int most = zstd.maxCompressedLength(plain.length);
            if (room.length < most) {
                room = new byte[most];
            }
            int length = zstd.compress(plain, 0, plain.length, room, 0, room.length);
            return BytesInput.from(Arrays.copyOf(room, length)); // the room is used again
        }

        @Override
        public CompressionCodecName getCodecName() {
            return CompressionCodecName.ZSTD;
        }

        @Override
        public void release() {
            // nothing is held
        }
    }
}
