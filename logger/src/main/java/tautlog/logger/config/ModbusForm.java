package tautlog.logger.config;

import java.util.OptionalInt;

/**
 * Where a Modbus RTU transmitter keeps its reading, and how it is asked.
 *
 * @param unitId of the device on the bus, 1 to 247
 * @param register address of the first register as sent, 0 to 65535
 * @param overloadCode what a whole number is when the load is above the device's scale; empty when it has none
 * @param timeoutMillis how long an answer is waited for
 */
public record ModbusForm(
        int unitId,
        int register,
        RegisterKind kind,
        ValueType type,
        WordOrder order,
        OptionalInt overloadCode,
        int timeoutMillis) {
    /** Which of the two sets of 16-bit registers. */
    public enum RegisterKind {
        HOLDING,
        INPUT
    }

    /** What the registers hold. */
    public enum ValueType {
        INT16(1),
        UINT16(1),
        INT32(2),
        FLOAT32(2);

        private final int registers;

        ValueType(int registers) {
            this.registers = registers;
        }

        /** How many registers it takes. */
        public int registers() {
            return registers;
        }
    }

    /** In which order the bytes of a value come; A is the most significant one. Of one register: AB or BA. */
    public enum WordOrder {
        ABCD(false, false),
        CDAB(true, false),
        BADC(false, true),
        DCBA(true, true);

        private final boolean swapsWords;
        private final boolean swapsBytes;

        WordOrder(boolean swapsWords, boolean swapsBytes) {
            this.swapsWords = swapsWords;
            this.swapsBytes = swapsBytes;
        }

        /** The value, 0 to 65535, of a register whose bytes came as {@code sent}, the first one in the high bits. */
        public int word(int sent) {
            return swapsBytes ? ((sent & 0xff) << 8) | (sent >>> 8) : sent;
        }

        /** The 32 bits of two registers; {@code first} came first. */
        public int joined(int first, int second) {
            return swapsWords ? (second << 16) | first : (first << 16) | second;
        }
    }
}
