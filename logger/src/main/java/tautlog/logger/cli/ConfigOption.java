package tautlog.logger.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import tautlog.config.ConfigException;
import tautlog.logger.config.Setup;

/** The option that names the configuration. */
final class ConfigOption {
    @Option(
            names = {"-c", "--config"},
            required = true,
            paramLabel = "logger.toml",
            description = "The logger's configuration.")
    Path file = Path.of("");

    Setup load() throws ConfigException {
        return Setup.load(file);
    }
}
