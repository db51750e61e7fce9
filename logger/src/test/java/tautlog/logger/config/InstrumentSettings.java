package tautlog.logger.config;

import java.nio.file.Path;
import java.util.List;
import tautlog.config.ConfigException;
import tautlog.config.Problem;

/** Settings of instruments for tests, as {@code logger.toml} would give them: kN with two decimals up to 60, ten a second. */
public final class InstrumentSettings {
    private InstrumentSettings() {}

    /** @param keys of {@code [instrument]}; unit, decimals, rate and full scale may be left out */
    public static InstrumentChoice.Text text(String keys) {
        return (InstrumentChoice.Text) choice("text", "rate_hz", keys);
    }

    /** As {@link #text}, for a Modbus transmitter. */
    public static InstrumentChoice.Modbus modbus(String keys) {
        return (InstrumentChoice.Modbus) choice("modbus", "poll_hz", keys);
    }

    /** What is wrong with such a transmitter's keys. */
    public static List<Problem> modbusProblems(String keys) {
        try {
            parse("modbus", "poll_hz", keys);
            return List.of();
        } catch (ConfigException wrong) {
            return wrong.problems();
        }
    }

    private static InstrumentChoice choice(String kind, String rateKey, String keys) {
        try {
            return parse(kind, rateKey, keys);
        } catch (ConfigException wrong) {
            throw new IllegalArgumentException(wrong);
        }
    }

    private static InstrumentChoice parse(String kind, String rateKey, String keys) throws ConfigException {
        StringBuilder toml =
                new StringBuilder("schema = 1\nrig = \"rig.toml\"\nrecordings = \"r\"\n[instrument]\nkind = \"" + kind
                        + "\"\nport = \"p\"\n");
        toml.append(keys);
        otherwise(toml, keys, "unit", "\"kN\"");
        otherwise(toml, keys, "decimals", "2");
        otherwise(toml, keys, rateKey, "10.0");
        otherwise(toml, keys, "full_scale", "60.0");
        return LoggerConfig.parse(Path.of("/etc/tautlog/logger.toml"), toml.toString())
                .instrument();
    }

    private static void otherwise(StringBuilder toml, String keys, String key, String value) {
        if (!("\n" + keys).contains("\n" + key + " =")) {
            toml.append(key).append(" = ").append(value).append('\n');
        }
    }
}
