package tautlog.logger.instrument.modbus;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import tautlog.logger.pty.PseudoTerminal;

/**
 * A Modbus RTU device at the other end of a pseudo-terminal, written from the specification (Modbus over Serial Line V1.02)
 * without the program's library: a request is eight bytes, unit, function, register, quantity, checksum low byte first. What it
 * answers, and when, the test decides.
 */
public final class IndependentSlave implements AutoCloseable {
    /** One question, as it came. */
    public record Asked(int unit, int function, int register, int quantity, int index) {}

    private final PseudoTerminal terminal;
    private final Function<Asked, byte[]> answers;
    private final Thread thread;
    private final List<Asked> asked = new CopyOnWriteArrayList<>();
    private volatile boolean closed;
    private volatile String trouble = "";

    /** @param answers the bytes of an answer, whole; none for silence. May sleep: the answer is then late */
    public IndependentSlave(PseudoTerminal terminal, Function<Asked, byte[]> answers) {
        this.terminal = terminal;
        this.answers = answers;
        thread = new Thread(this::serve, "slave");
        thread.start();
    }

    public List<Asked> asked() {
        return asked;
    }

    /** What a request had wrong; empty with none. */
    public String trouble() {
        return trouble;
    }

    private void serve() {
        List<Byte> request = new ArrayList<>();
        byte[] chunk = new byte[64];
        try {
            while (!closed) {
                int n = terminal.read(chunk);
                for (int i = 0; i < n; i++) {
                    request.add(chunk[i]);
                    if (request.size() == 8) {
                        answer(request);
                        request.clear();
                    }
                }
                if (n == 0) {
                    Thread.sleep(1);
                }
            }
        } catch (Exception ended) {
            if (!closed) {
                trouble = ended.toString();
            }
        }
    }

    private void answer(List<Byte> request) throws Exception {
        byte[] bytes = new byte[8];
        for (int i = 0; i < 8; i++) {
            bytes[i] = request.get(i);
        }
        int crc = crc(bytes, 6);
        if ((bytes[6] & 0xff) != (crc & 0xff) || (bytes[7] & 0xff) != crc >> 8) {
            trouble = "a request with a wrong checksum";
        }
        Asked question = new Asked(bytes[0] & 0xff, bytes[1] & 0xff, u16(bytes, 2), u16(bytes, 4), asked.size());
        asked.add(question);
        terminal.write(answers.apply(question));
    }

    private static int u16(byte[] bytes, int at) {
        return (bytes[at] & 0xff) << 8 | bytes[at + 1] & 0xff;
    }

    /** An answer with these register bytes. */
    public static byte[] registers(Asked to, int... bytes) {
        int[] body = new int[3 + bytes.length];
        body[0] = to.unit();
        body[1] = to.function();
        body[2] = bytes.length;
        System.arraycopy(bytes, 0, body, 3, bytes.length);
        return framed(body);
    }

    public static byte[] exception(Asked to, int code) {
        return framed(to.unit(), to.function() | 0x80, code);
    }

    /** Puts the checksum behind. */
    public static byte[] framed(int... body) {
        byte[] frame = new byte[body.length + 2];
        for (int i = 0; i < body.length; i++) {
            frame[i] = (byte) body[i];
        }
        int crc = crc(frame, body.length);
        frame[body.length] = (byte) crc;
        frame[body.length + 1] = (byte) (crc >> 8);
        return frame;
    }

    /** CRC-16/MODBUS bit by bit: polynomial 8005 reflected (A001), start FFFF. */
    static int crc(byte[] bytes, int n) {
        int crc = 0xffff;
        for (int i = 0; i < n; i++) {
            crc ^= bytes[i] & 0xff;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 1) != 0 ? crc >> 1 ^ 0xa001 : crc >> 1;
            }
        }
        return crc;
    }

    @Override
    public void close() {
        closed = true;
        try {
            thread.join();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        terminal.close();
    }
}
