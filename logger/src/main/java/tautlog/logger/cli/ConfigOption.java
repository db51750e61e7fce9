package tautlog.logger.cli;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.logger.config.Installation;

/** The option that names the configuration. */
final class ConfigOption {
    @Option(
            names = {"-c", "--config"},
            required = true,
            paramLabel = "logger.toml",
            description = "The logger's configuration.")
    Path file = Path.of("");

    /** @throws ConfigException also when nothing of what comes could be believed, and so nothing recorded */
    Installation loadToRecord() throws ConfigException {
        Installation installation = load();
        if (!installation.config().instrument().isOrderKnown()) {
            throw new ConfigException(List.of(new Problem(
                    file.toString(),
                    1,
                    "instrument.word_order_proof",
                    "is missing, and without it no reading of two registers, or of one with its bytes swapped, is believed:"
                            + " nothing would be recorded",
                    "`tautlogd listen` shows the bytes: with a known load on write"
                            + " word_order_proof = { reading = …, bytes = \"…\" }.")));
        }
        return installation;
    }

    Installation load() throws ConfigException {
        return Installation.load(file);
    }
}
