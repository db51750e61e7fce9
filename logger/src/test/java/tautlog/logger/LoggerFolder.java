package tautlog.logger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import tautlog.config.ConfigException;
import tautlog.logger.config.Installation;

/** A folder with a {@code logger.toml} and the rig that it names: winch upper-landing, full pull 40 kN, 0.01 N a count. */
public record LoggerFolder(Path path) {
    /** Hookup straight (20 kN, the default, selector 1) and choked (15 kN, selector 2). */
    public static final String RIG = """
            schema = 1
            [winch]
            name = "upper-landing"
            rated_pull = "40 kN"
            [[gear]]
            id = "choker"
            kind = "chain"
            wll = "20 kN"
            [[hookup]]
            id = "straight"
            default = true
            selector = 1
            items = [ { gear = "choker" } ]
            [[hookup]]
            id = "choked"
            selector = 2
            items = [ { gear = "choker", as = "choker", choke_angle_deg = 130 } ]
            """;

    /** The clock that counts the instrument's ticks from this instant. */
    public static final String DEVICE_CLOCK = "clock = \"device\"\nstart_utc = 2026-05-04T07:00:00Z\n";

    public static final String HOST_CLOCK = "clock = \"host\"\n";

    /** Writes both files into {@code path}. */
    public static LoggerFolder at(Path path, String port, String clock) throws IOException {
        LoggerFolder folder = new LoggerFolder(path);
        Files.writeString(path.resolve("rig.toml"), RIG);
        Files.writeString(folder.config(), """
                schema = 1
                rig = "rig.toml"
                recordings = "recordings"
                [instrument]
                port = "%s"
                %s
                [calibration]
                zero_counts = 0.0
                newtons_per_count = 0.01
                """.formatted(port, clock));
        return folder;
    }

    public Path config() {
        return path.resolve("logger.toml");
    }

    public Path recordings() {
        return path.resolve("recordings");
    }

    public Installation installation() throws ConfigException {
        return Installation.load(config());
    }

    /** Sections that have it publish to a broker and a series server of this computer. */
    public static String publish(int broker, int influx) {
        return """
                [publish.mqtt]
                url = "tcp://127.0.0.1:%d"
                [publish.influx]
                url = "http://127.0.0.1:%d"
                org = "outfit"
                bucket = "winches"
                """.formatted(broker, influx);
    }
}
