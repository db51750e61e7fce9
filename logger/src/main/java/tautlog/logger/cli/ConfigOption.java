package tautlog.logger.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import tautlog.config.ConfigException;
import tautlog.logger.config.Installation;

/** The option that names the configuration. */
final class ConfigOption {
    @Option(
            names = {"-c", "--config"},
            required = true,
            paramLabel = "logger.toml",
            description = "The logger's configuration.")
    Path file = Path.of("");

    Installation load() throws ConfigException {
        return Installation.load(file);
    }
}
