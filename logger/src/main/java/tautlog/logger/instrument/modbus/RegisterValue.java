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

    /** Whether a possible value speaks for the order by which it was read. */
    enum Telling {
        /** In every other order it would be another value. */
        TELLS,
        /** It is the same value in every order, as zero is: right, and no sign of anything. */
        ALIKE,
        /** Some other order reads the same, not all. */
        UNCLEAR
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

    /** Of the bytes that were {@link #read} last. */
    long counts() {
        return counts;
    }

    /** @param bytes of one register or two, the first one in the highest bits */
    Meaning read(int bytes) {
        double value = type.value(order.bits(bytes, type));
        if (type == ValueType.FLOAT32) {
            return measured(value);
        }
        counts = (long) value;
        return overloadCode.isPresent() && overloadCode.getAsInt() == counts ? Meaning.OVERLOAD : Meaning.NUMBER;
    }

    /** What {@code bytes} tell of the order that they came in. */
    Telling telling(int bytes) {
        if (order.isTold(bytes, type)) {
            return Telling.TELLS;
        }
        return order.isAlikeInAll(bytes, type) ? Telling.ALIKE : Telling.UNCLEAR;
    }

    private Meaning measured(double value) {
        if (!Double.isFinite(value)) {
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
