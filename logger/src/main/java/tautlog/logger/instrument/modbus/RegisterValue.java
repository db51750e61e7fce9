package tautlog.logger.instrument.modbus;

import java.util.OptionalInt;
import tautlog.logger.config.ModbusForm;
import tautlog.logger.config.ModbusForm.ValueType;
import tautlog.logger.config.ModbusForm.WordOrder;

/** Reads a register's bytes as a count: a whole number as it is, a float times ten to the power of the decimals. */
final class RegisterValue {
    /** What the bytes say. */
    enum Meaning {
        /** {@link #counts} is the reading. */
        NUMBER,
        /** The device's code for a load above its scale. */
        OVERLOAD,
        /** A float that is none, or no size that a measured value has. */
        NOT_FINITE,
        ABSURD
    }

    /**
     * A float that is not zero but less than a millionth of the last digit was never measured; a swapped order of bytes
     * makes such ones. Chosen.
     */
    private static final double LEAST_OF_A_STEP = 1e-6;

    private final ValueType type;
    private final WordOrder order;
    private final OptionalInt overloadCode;
    private final double stepsInOne;
    private long counts;

    RegisterValue(ModbusForm form, int decimals) {
        type = form.type();
        order = form.order();
        overloadCode = form.overloadCode();
        stepsInOne = Math.pow(10, decimals);
    }

    long counts() {
        return counts;
    }

    /** @param bytes of one register or two, the first one in the highest bits */
    Meaning read(int bytes) {
        int first = order.word(bytes >>> 16);
        int bits = type.registers() == 2 ? order.joined(first, order.word(bytes & 0xffff)) : first;
        if (type == ValueType.FLOAT32) {
            return measured(Float.intBitsToFloat(bits));
        }
        counts = type == ValueType.INT16 ? (short) bits : bits;
        return overloadCode.isPresent() && overloadCode.getAsInt() == counts ? Meaning.OVERLOAD : Meaning.NUMBER;
    }

    private Meaning measured(float value) {
        if (!Float.isFinite(value)) {
            return Meaning.NOT_FINITE;
        }
        double steps = value * stepsInOne;
        if (steps != 0 && Math.abs(steps) < LEAST_OF_A_STEP) {
            return Meaning.ABSURD;
        }
        counts = Math.round(steps);
        return Meaning.NUMBER;
    }
}
