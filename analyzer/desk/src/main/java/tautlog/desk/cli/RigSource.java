package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import tautlog.config.ConfigException;
import tautlog.rig.Rig;

/**
 * A rig file that was read.
 *
 * @param toml its text
 */
record RigSource(Rig rig, String toml) {
    static RigSource read(Path file) throws IOException, ConfigException, UsageException {
        String toml = TextFile.read("--rig", file, "Give the rig file of the winch, rig.toml.");
        return new RigSource(Rig.parse(file.toString(), toml), toml);
    }
}
