package tautlog.logger.config;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Where a Modbus RTU transmitter keeps its reading, and how it is asked.
 *
 * @param unitId of the device on the bus, 1 to 247
 * @param register address of the first register as sent, 0 to 65535
 * @param proof by which the order is known; a reading in another order than the specification's is not to be believed without
 * @param overloadCode what a whole number is when the load is above the device's scale; empty when it has none
 * @param timeoutMillis how long an answer is waited for
 */
public record ModbusForm(
        int unitId,
        int register,
        RegisterKind kind,
        ValueType type,
        WordOrder order,
        Optional<WordOrderProof> proof,
        OptionalInt overloadCode,
        int timeoutMillis) {
    /**
     * Whether the order of a value's bytes is known: the specification fixes that of one register (Modbus Application Protocol
     * V1.1b3, 4.2: the most significant byte first), of two it says nothing. A device that swaps the bytes of one register is proven
     * like any other.
     */
    public boolean isOrderKnown() {
        boolean isSpecified = type.registers() == 1 && !order.isOtherThan(WordOrder.ABCD, type);
        return isSpecified || proof.isPresent();
    }

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

        /** The bytes of one register or two as a person writes them; {@code bytes} holds the first one in the highest bits. */
        public String hex(int bytes) {
            return IntStream.range(0, 2 * registers)
                    .mapToObj(i -> "%02X".formatted(bytes >>> (24 - 8 * i) & 0xff))
                    .collect(Collectors.joining(" "));
        }

        /** The number that {@code bits} are; not finite for a float that is none. */
        public double value(int bits) {
            if (this == FLOAT32) {
                return Float.intBitsToFloat(bits);
            }
            return this == INT16 ? (short) bits : bits;
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

        /** Whether the other order gives other bits of some value of that type. */
        boolean isOtherThan(WordOrder other, ValueType type) {
            return swapsBytes != other.swapsBytes || (type.registers() > 1 && swapsWords != other.swapsWords);
        }

        /** Whether every other order reads {@code bytes} as another value: whether they can tell the orders apart. */
        public boolean isTold(int bytes, ValueType type) {
            return Arrays.stream(values())
                    .filter(other -> other.isOtherThan(this, type))
                    .allMatch(other -> other.bits(bytes, type) != bits(bytes, type));
        }

        /** Whether every order reads {@code bytes} as the same value, as it does zero: it is then right in any. */
        public boolean isAlikeInAll(int bytes, ValueType type) {
            return Arrays.stream(values()).allMatch(other -> other.bits(bytes, type) == bits(bytes, type));
        }

        /**
         * The bits of a value.
         *
         * @param bytes of one register or two, as they came, the first one in the highest bits
         */
        public int bits(int bytes, ValueType type) {
            int first = word(bytes >>> 16);
            return type.registers() == 1 ? first : joined(first, word(bytes & 0xffff));
        }

        private int word(int sent) {
            return swapsBytes ? ((sent & 0xff) << 8) | (sent >>> 8) : sent;
        }

        private int joined(int first, int second) {
            return swapsWords ? (second << 16) | first : (first << 16) | second;
        }
    }
}
