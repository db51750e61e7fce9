package tautlog.logger.config;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * A file that holds a secret and nothing else; spaces and line ends around it do not count. What is in it is never kept, shown or
 * logged here.
 */
public record SecretFile(Path path) {
    private static final int LONGEST_BYTES = 4_096;
    private static final Set<PosixFilePermission> OWNERS = PosixFilePermissions.fromString("rwx------");

    /** @throws IOException in words, if it is not there, its group or everybody has any right to it, is empty or cannot be read */
    public String read() throws IOException {
        if (!Files.isRegularFile(path)) {
            throw new IOException(path + " is not there. Write the secret into this file.");
        }
        if (Files.getPosixFilePermissions(path).stream().anyMatch(right -> !OWNERS.contains(right))) {
            throw new IOException(path + " is open to others than its owner. Take that away: chmod 600 " + path);
        }
        if (!Files.isReadable(path)) {
            throw new IOException(
                    path + " may not be read by the user that tautlogd runs as. Give it to that user: chown.");
        }
        if (Files.size(path) > LONGEST_BYTES) {
            throw new IOException(path + " holds more than " + LONGEST_BYTES + " bytes: that is no password or token.");
        }
        String secret = Files.readString(path, StandardCharsets.UTF_8).strip();
        if (secret.isEmpty()) {
            throw new IOException(path + " is empty. Write the secret into this file.");
        }
        return secret;
    }
}
