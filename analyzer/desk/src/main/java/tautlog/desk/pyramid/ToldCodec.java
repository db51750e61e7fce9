package tautlog.desk.pyramid;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import tautlog.sample.HookupSource;

/** Bytes of what was told. */
final class ToldCodec {
    private static final int HOOKUP = 1;
    private static final int SELECTOR = 2;
    private static final int MARK = 3;

    private ToldCodec() {}

    static void write(Told told, DataOutput out) throws IOException {
        if (told instanceof Told.Hookup hookup) {
            out.writeByte(HOOKUP);
            out.writeLong(hookup.number());
            out.writeLong(hookup.tick());
            text(hookup.id(), out);
            text(hookup.by().name(), out);
        } else if (told instanceof Told.Selector selector) {
            out.writeByte(SELECTOR);
            out.writeLong(selector.number());
            out.writeLong(selector.tick());
            out.writeInt(selector.position());
        } else if (told instanceof Told.Mark mark) {
            out.writeByte(MARK);
            out.writeLong(mark.tick());
            text(mark.note(), out);
        }
    }

    static Told read(DataInput in) throws IOException {
        int kind = in.readByte();
        return switch (kind) {
            case HOOKUP -> new Told.Hookup(in.readLong(), in.readLong(), text(in), HookupSource.valueOf(text(in)));
            case SELECTOR -> new Told.Selector(in.readLong(), in.readLong(), in.readInt());
            case MARK -> new Told.Mark(in.readLong(), text(in));
            default -> throw new IOException("something of kind " + kind + " is not known");
        };
    }

    private static void text(String text, DataOutput out) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    private static String text(DataInput in) throws IOException {
        byte[] bytes = new byte[in.readInt()];
        in.readFully(bytes);
        return new String(bytes, StandardCharsets.UTF_8);
    }
}
