package tautlog.desk.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
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
        if (!Files.isRegularFile(file)) {
            throw new UsageException(
                    "--rig: there is no file " + file + ".\n  Give the rig file of the winch, rig.toml.");
        }
        String toml = text(file);
        return new RigSource(Rig.parse(file.toString(), toml), toml);
    }

    private static String text(Path file) throws IOException, UsageException {
        try {
            return Files.readString(file);
        } catch (CharacterCodingException e) {
            throw new UsageException(
                    "--rig: " + file + " is no text in UTF-8.\n  Give the rig file of the winch, rig.toml.");
        }
    }
}
