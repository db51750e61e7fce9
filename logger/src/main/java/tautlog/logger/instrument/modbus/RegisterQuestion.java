package tautlog.logger.instrument.modbus;

import com.digitalpetri.modbus.Crc16;
import com.digitalpetri.modbus.ModbusPduSerializer.DefaultRequestSerializer;
import com.digitalpetri.modbus.ModbusRtuFrame;
import com.digitalpetri.modbus.ModbusRtuResponseFrameParser;
import com.digitalpetri.modbus.ModbusRtuResponseFrameParser.Accumulated;
import com.digitalpetri.modbus.ModbusRtuResponseFrameParser.ParseError;
import com.digitalpetri.modbus.ModbusRtuResponseFrameParser.ParserState;
import com.digitalpetri.modbus.pdu.ModbusRequestPdu;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;
import tautlog.logger.config.ModbusForm;
import tautlog.logger.config.ModbusForm.RegisterKind;
import tautlog.logger.instrument.ReadingFault;

/** The one question that is asked again and again, and what an answer to it must be. Not thread-safe. */
final class RegisterQuestion {
    /** The library's room for an answer. */
    private static final int LONGEST_ANSWER = 256;

    private static final int EXCEPTION_BIT = 0x80;

    /**
     * What came, or why it is of no use.
     *
     * @param bytes of the registers, the first one in the highest bits
     */
    record Answer(int bytes, Optional<ReadingFault> fault) {
        static Answer fault(ReadingFault fault) {
            return new Answer(0, Optional.of(fault));
        }
    }

    private final ModbusForm form;
    private final ModbusRequestPdu pdu;
    private final byte[] request;
    private final ModbusRtuResponseFrameParser parser = new ModbusRtuResponseFrameParser();
    private int received;

    RegisterQuestion(ModbusForm form) {
        this.form = form;
        int n = form.type().registers();
        pdu = form.kind() == RegisterKind.HOLDING
                ? new ReadHoldingRegistersRequest(form.register(), n)
                : new ReadInputRegistersRequest(form.register(), n);
        request = encoded();
    }

    private byte[] encoded() {
        ByteBuffer frame = ByteBuffer.allocate(LONGEST_ANSWER);
        frame.put((byte) form.unitId());
        try {
            DefaultRequestSerializer.INSTANCE.encode(pdu, frame);
        } catch (Exception impossible) {
            throw new IllegalStateException("a request of known kind cannot be encoded", impossible);
        }
        int crc = crc(frame.array(), frame.position());
        frame.put((byte) crc).put((byte) (crc >> 8)); // low byte first
        return Arrays.copyOf(frame.array(), frame.position());
    }

    private static int crc(byte[] bytes, int n) {
        Crc16 crc = new Crc16();
        for (int i = 0; i < n; i++) {
            crc.update(bytes[i]);
        }
        return crc.getValue();
    }

    /** The request as it goes over the line; a copy. */
    byte[] request() {
        return request.clone();
    }

    /** An answer is to come. */
    void begin() {
        parser.reset();
        received = 0;
    }

    /** Takes the next bytes; empty while the answer is not whole. */
    Optional<Answer> take(byte[] bytes, int n) {
        received += n;
        if (received > LONGEST_ANSWER) {
            return Optional.of(Answer.fault(ReadingFault.WRONG_FUNCTION));
        }
        ParserState state = parser.parse(Arrays.copyOf(bytes, n));
        if (state instanceof Accumulated whole) {
            return Optional.of(read(whole.frame()));
        }
        return state instanceof ParseError ? Optional.of(Answer.fault(ReadingFault.WRONG_FUNCTION)) : Optional.empty();
    }

    private Answer read(ModbusRtuFrame frame) {
        byte[] body = new byte[frame.pdu().remaining()];
        frame.pdu().duplicate().get(body);
        if (!isIntact(frame, body)) {
            return Answer.fault(ReadingFault.BAD_CRC);
        }
        if (frame.unitId() != form.unitId()) {
            return Answer.fault(ReadingFault.WRONG_UNIT_ID);
        }
        int function = body[0] & 0xff;
        if (function == (pdu.getFunctionCode() | EXCEPTION_BIT)) {
            return Answer.fault(ReadingFault.EXCEPTION);
        }
        if (function != pdu.getFunctionCode()) {
            return Answer.fault(ReadingFault.WRONG_FUNCTION);
        }
        // function, count of bytes, the bytes
        if (body.length != 2 + 2 * form.type().registers()) {
            return Answer.fault(ReadingFault.SHORT_REPLY);
        }
        int bytes = 0;
        for (int i = 0; i < 4; i++) {
            bytes = (bytes << 8) | (2 + i < body.length ? body[2 + i] & 0xff : 0);
        }
        return new Answer(bytes, Optional.empty());
    }

    private static boolean isIntact(ModbusRtuFrame frame, byte[] body) {
        byte[] covered = new byte[1 + body.length];
        covered[0] = (byte) frame.unitId();
        System.arraycopy(body, 0, covered, 1, body.length);
        int crc = crc(covered, covered.length);
        ByteBuffer told = frame.crc();
        int low = told.get(told.position()) & 0xff;
        int high = told.get(told.position() + 1) & 0xff;
        return ((high << 8) | low) == crc;
    }
}
