package tautlog.logger.config;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.config.ConfigTable;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.logger.config.ModbusForm.ValueType;
import tautlog.logger.config.ModbusForm.WordOrder;

/**
 * What a transmitter's registers held while a known load was on: by it the order of the bytes is known.
 *
 * <p>Readings alone cannot tell it. A whole number of 1 in BADC is a possible 256 in ABCD, and a line that is nearly slack stays
 * among such; only something that is known from elsewhere decides.
 *
 * @param bytes of one register or two, as they came, the first one in the highest bits
 * @param reading what the device's own display showed, in its unit; not zero
 */
public record WordOrderProof(int bytes, BigDecimal reading) {
    /** Chosen: a display is read some moments before or after the registers, a known load is known to a few percent. */
    private static final double NEAR = 0.1;
    /** Chosen: well beyond what is near, so that no order is excluded by a load that was only roughly known. */
    private static final double FAR = 0.25;

    private static final String KEY = "word_order_proof";
    private static final String HOW = "See `tautlogd listen` with a known load on; firmware-notes/own.md says how.";

    /** Of {@code bytes} in the unit, by that order. */
    private double read(ValueType type, WordOrder order, int decimals) {
        double value = type.value(order.bits(bytes, type));
        return type == ValueType.FLOAT32 ? value : value / Math.pow(10, decimals);
    }

    private double distance(ValueType type, WordOrder order, int decimals) {
        double known = reading.doubleValue();
        double off = Math.abs(read(type, order, decimals) - known) / Math.abs(known);
        return Double.isNaN(off) ? Double.POSITIVE_INFINITY : off;
    }

    boolean fits(ValueType type, WordOrder order, int decimals) {
        return distance(type, order, decimals) <= NEAR;
    }

    /** Whether every other order reads something that the load cannot have been. */
    boolean excludesOthers(ValueType type, WordOrder order, int decimals) {
        return Arrays.stream(WordOrder.values())
                .filter(other -> other.isOtherThan(order, type))
                .allMatch(other -> distance(type, other, decimals) > FAR);
    }

    /** Reads it from {@code [instrument]}; one that does not prove {@code order} is a problem. */
    static Optional<WordOrderProof> read(ConfigTable instrument, ValueType type, WordOrder order, int decimals) {
        Optional<ConfigTable> table = instrument.table(KEY);
        Optional<Integer> bytes = table.flatMap(keys -> keys.required("bytes", bytesOf(type)));
        Optional<BigDecimal> reading = table.flatMap(keys -> keys.required("reading", notZero()));
        Optional<WordOrderProof> proof = bytes.flatMap(held -> reading.map(shown -> new WordOrderProof(held, shown)));
        proof.flatMap(found -> found.objection(type, order, decimals))
                .ifPresent(found -> instrument.problem(KEY, found, HOW));
        return proof;
    }

    private Optional<String> objection(ValueType type, WordOrder order, int decimals) {
        if (!fits(type, order, decimals)) {
            String fitting = Arrays.stream(WordOrder.values())
                    .filter(other -> fits(type, other, decimals))
                    .map(Enum::name)
                    .collect(Collectors.joining(", "));
            return Optional.of("its bytes read " + read(type, order, decimals) + " in the order " + order + ", not "
                    + reading.toPlainString() + "; "
                    + (fitting.isEmpty()
                            ? "they fit in no order: look at register, type, decimals and unit"
                            : "they fit in the order " + fitting));
        }
        return excludesOthers(type, order, decimals)
                ? Optional.empty()
                : Optional.of("another order reads nearly the same of these bytes: take another load");
    }

    private static Reading<Integer> bytesOf(ValueType type) {
        int n = 2 * type.registers();
        String allowed = "the " + n + " bytes of the registers as `tautlogd listen` shows them, such as \""
                + "41 45 70 A4".substring(0, 3 * n - 1) + "\"";
        return new Reading<>(allowed, written -> {
            try {
                byte[] bytes =
                        HexFormat.ofDelimiter(" ").parseHex(Reading.text().read(written));
                if (bytes.length == n) {
                    return leftAligned(bytes);
                }
            } catch (IllegalArgumentException noHex) {
                throw new Refusal(Reading.show(written) + " are no bytes", "Write " + allowed + ".");
            }
            throw new Refusal(Reading.show(written) + " are not " + n + " bytes", "Write " + allowed + ".");
        });
    }

    private static int leftAligned(byte[] bytes) {
        int joined = 0;
        for (int i = 0; i < 4; i++) {
            joined = (joined << 8) | (i < bytes.length ? bytes[i] & 0xff : 0);
        }
        return joined;
    }

    private static Reading<BigDecimal> notZero() {
        Reading<BigDecimal> decimal = Reading.decimal(Range.between("-1e9", "1e9"));
        return new Reading<>("what the device's own display showed, in the unit, not zero", written -> {
            BigDecimal reading = decimal.read(written);
            if (reading.signum() == 0) {
                throw new Refusal("zero is zero in every order", "Hang a load, and write what the display shows.");
            }
            return reading;
        });
    }
}
