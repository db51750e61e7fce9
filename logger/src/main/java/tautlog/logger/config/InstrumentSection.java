package tautlog.logger.config;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tautlog.config.ConfigTable;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.logger.config.ModbusForm.RegisterKind;
import tautlog.logger.config.ModbusForm.ValueType;
import tautlog.logger.config.ModbusForm.WordOrder;
import tautlog.logger.config.TextForm.Checksum;
import tautlog.logger.config.TextForm.LineEnd;
import tautlog.logger.port.SerialSetting;
import tautlog.logger.port.SerialSetting.Parity;
import tautlog.logger.port.UsbIdentity;
import tautlog.quantity.ForceUnit;

/** Reads {@code [instrument]} and {@code [shaft]}: the keys that their kind of instrument has, and no others. */
final class InstrumentSection {
    private static final int LONGEST_LINE = 128;
    private static final Reading<Integer> DECIMALS = Reading.whole(0, 6);
    private static final Map<String, ForceUnit> UNITS =
            Stream.of(ForceUnit.values()).collect(Collectors.toMap(ForceUnit::symbol, Function.identity()));

    private enum Kind {
        FRAMED,
        TEXT,
        MODBUS
    }

    private final ConfigTable table;
    private final Path file;
    private final Kind kind;

    InstrumentSection(ConfigTable table, Path file) {
        this.table = table;
        this.file = file;
        kind = table.or("kind", Reading.oneOf(Kind.class), Kind.FRAMED);
    }

    boolean isFramed() {
        return kind == Kind.FRAMED;
    }

    /** The port and its characters: a framed instrument's are always the same, a Modbus device's have 8 bits. */
    Optional<SerialSetting> line() {
        Optional<String> port = table.required("port", port(file));
        int baud = baud(table, kind == Kind.FRAMED ? 115_200 : 9_600);
        int dataBits = kind == Kind.TEXT ? table.or("data_bits", Reading.whole(7, 8), 8) : 8;
        Parity parity = kind == Kind.FRAMED
                ? Parity.NONE
                : table.or("parity", Reading.oneOf(Parity.class), kind == Kind.MODBUS ? Parity.EVEN : Parity.NONE);
        int stopBits = kind == Kind.FRAMED ? 1 : table.or("stop_bits", Reading.whole(1, 2), 1);
        return port.map(path -> new SerialSetting(path, baud, dataBits, parity, stopBits));
    }

    private static int baud(ConfigTable table, int otherwise) {
        return table.or("baud", Reading.whole(300, 4_000_000), otherwise);
    }

    Optional<InstrumentChoice> choice() {
        if (kind == Kind.FRAMED) {
            return Optional.of(new InstrumentChoice.Framed());
        }
        if (kind == Kind.TEXT) {
            Optional<TextForm> form = textForm();
            Optional<ReadingScale> scale = scale("TEXT", "rate_hz");
            return form.flatMap(lines -> scale.map(readings -> new InstrumentChoice.Text(lines, readings)));
        }
        Optional<ModbusForm> form = modbusForm();
        Optional<ReadingScale> scale = scale("MODBUS", "poll_hz");
        return form.flatMap(place -> scale.map(readings -> new InstrumentChoice.Modbus(place, readings)));
    }

    private Optional<TextForm> textForm() {
        int before = table.problemsSoFar();
        Optional<Pattern> pattern = pattern();
        Optional<Optional<Integer>> length = table.required("length", length());
        LineEnd end = table.or("line_end", Reading.oneOf(LineEnd.class), LineEnd.CRLF);
        boolean summed =
                pattern.filter(lines -> TextForm.hasGroup(lines, "checksum")).isPresent();
        Checksum checksum = summed
                ? table.required("checksum", Reading.oneOf(Checksum.class)).orElse(Checksum.XOR)
                : Checksum.XOR;
        return table.problemsSoFar() > before
                ? Optional.empty()
                : Optional.of(new TextForm(pattern.orElseThrow(), length.orElseThrow(), end, checksum));
    }

    private Optional<Pattern> pattern() {
        if (table.has("pattern") && table.has("format")) {
            table.problem("pattern", "stands beside a format", "Write either a ready format or a pattern.");
        }
        if (table.has("pattern")) {
            table.optional("format", Reading.oneOf(TextShape.class));
            return table.optional("pattern", regex());
        }
        return table.required("format", Reading.oneOf(TextShape.class)).map(TextShape::pattern);
    }

    private static Reading<Pattern> regex() {
        String allowed = "a regular expression of the whole line with the group (?<value>…), in single quotes";
        return new Reading<>(allowed, written -> {
            try {
                Pattern pattern = Pattern.compile(Reading.text().read(written));
                if (!TextForm.hasGroup(pattern, "value")) {
                    throw new Refusal(Reading.show(written) + " has no group value", "Write " + allowed + ".");
                }
                return pattern;
            } catch (PatternSyntaxException wrong) {
                throw new Refusal(
                        Reading.show(written) + " is no regular expression: " + wrong.getDescription(),
                        "Write " + allowed + ".");
            }
        });
    }

    private static Reading<Optional<Integer>> length() {
        Reading<Integer> whole = Reading.whole(1, LONGEST_LINE);
        String allowed = "the characters of every line without its end, 1 to " + LONGEST_LINE
                + ", or \"varies\" when the device does not pad its lines";
        return new Reading<>(
                allowed, written -> "varies".equals(written) ? Optional.empty() : Optional.of(whole.read(written)));
    }

    private Optional<ModbusForm> modbusForm() {
        int before = table.problemsSoFar();
        Optional<Integer> unitId = table.required("unit_id", Reading.whole(1, 247));
        Optional<Integer> register = table.required("register", Reading.whole(0, 65_535));
        Optional<RegisterKind> registers = table.required("register_kind", Reading.oneOf(RegisterKind.class));
        Optional<ValueType> type = table.required("type", Reading.oneOf(ValueType.class));
        boolean isLong = type.filter(value -> value.registers() > 1).isPresent();
        Map<String, WordOrder> orders =
                Stream.of(WordOrder.values()).collect(Collectors.toMap(Enum::name, Function.identity()));
        WordOrder order = isLong
                ? table.required("word_order", Reading.oneOf(orders)).orElse(WordOrder.ABCD)
                : table.or("word_order", Reading.oneOf(orders), WordOrder.ABCD);
        OptionalInt overloadCode = type.filter(ValueType.FLOAT32::equals).isPresent()
                ? OptionalInt.empty()
                : table.optional("overload_code", Reading.whole(Integer.MIN_VALUE, Integer.MAX_VALUE))
                        .map(OptionalInt::of)
                        .orElse(OptionalInt.empty());
        int decimals = table.or("decimals", DECIMALS, 0);
        Optional<WordOrderProof> proof = type.flatMap(value -> WordOrderProof.read(table, value, order, decimals));
        int timeoutMillis = table.optional("timeout", Reading.time("1"))
                .map(time -> Math.max(1, time.seconds().movePointRight(3).intValue()))
                .orElse(200);
        if (register.isPresent() && isLong && register.get() == 65_535) {
            table.problem("register", "65535 has no second register behind it", "Allowed: 0 to 65534 with this type.");
        }
        return table.problemsSoFar() > before
                ? Optional.empty()
                : Optional.of(new ModbusForm(
                        unitId.orElseThrow(),
                        register.orElseThrow(),
                        registers.orElseThrow(),
                        type.orElseThrow(),
                        order,
                        proof,
                        overloadCode,
                        timeoutMillis));
    }

    private Optional<ReadingScale> scale(String defaultName, String rateKey) {
        int before = table.problemsSoFar();
        String name = table.or("name", instrumentName(), defaultName);
        Optional<ForceUnit> unit = table.required("unit", Reading.oneOf(UNITS));
        Optional<Integer> decimals = table.required("decimals", DECIMALS);
        Optional<BigDecimal> rate = table.required(rateKey, Reading.decimal(Range.between("1", "4000")));
        Optional<BigDecimal> greatest = table.required("full_scale", Reading.decimal(Range.aboveZero()));
        Optional<Integer> counts = greatest.flatMap(value -> decimals.flatMap(places -> counts(value, places)));
        return table.problemsSoFar() > before
                ? Optional.empty()
                : Optional.of(new ReadingScale(
                        name,
                        unit.orElseThrow(),
                        decimals.orElseThrow(),
                        millihertz(rate.orElseThrow()),
                        counts.orElseThrow()));
    }

    private static long millihertz(BigDecimal hertz) {
        return hertz.movePointRight(3).setScale(0, RoundingMode.HALF_UP).longValueExact();
    }

    private Optional<Integer> counts(BigDecimal value, int decimals) {
        try {
            return Optional.of(value.movePointRight(decimals).intValueExact());
        } catch (ArithmeticException notACount) {
            table.problem(
                    "full_scale",
                    value.toPlainString() + " has more than " + decimals + " decimals, or too many digits",
                    "Write the greatest reading as the display shows it.");
            return Optional.empty();
        }
    }

    private static Reading<String> instrumentName() {
        Pattern allowed = Pattern.compile("[!-~]{1,8}");
        return new Reading<>("a name of 1 to 8 ASCII characters", written -> {
            String name = Reading.text().read(written);
            if (!allowed.matcher(name).matches()) {
                throw new Refusal(Reading.show(written) + " is not a name", "Write 1 to 8 ASCII characters.");
            }
            return name;
        });
    }

    /** Reads {@code [shaft]}. */
    static Optional<ShaftChoice> shaft(ConfigTable table, Path file) {
        table.or("kind", Reading.oneOf(Map.of("framed", Kind.FRAMED)), Kind.FRAMED);
        Optional<String> port = table.required("port", port(file));
        int baud = baud(table, 115_200);
        Optional<Integer> pulses = table.required("pulses_per_revolution", Reading.whole(1, 65_535));
        return port.flatMap(path -> pulses.map(each -> new ShaftChoice(SerialSetting.plain(path, baud), each)));
    }

    /** A USB identity is taken as it is; a bare name is the system's; one with a slash that is no absolute path starts from the file's folder. */
    static Reading<String> port(Path file) {
        return new Reading<>("the port's name (\"/dev/ttyACM0\")", written -> {
            if (written instanceof String text && text.startsWith(UsbIdentity.PREFIX)) {
                return UsbIdentity.read(text)
                        .map(UsbIdentity::toString)
                        .orElseThrow(() -> new Refusal(
                                Reading.show(written) + " is not a USB identity",
                                "Write \"usb:1a86:7523:SERIAL\" as `tautlogd ports` prints it: vendor and product in four"
                                        + " hexadecimal digits each, the serial number if there is one."));
            }
            if (written instanceof String text && !text.isBlank() && text.indexOf('\0') < 0) {
                return text.contains("/")
                        ? file.toAbsolutePath().resolveSibling(text).normalize().toString()
                        : text;
            }
            throw new Refusal(
                    Reading.show(written) + " is not a port's name",
                    "Write it in quotes: \"/dev/ttyACM0\". `tautlogd ports` lists those there are.");
        });
    }
}
