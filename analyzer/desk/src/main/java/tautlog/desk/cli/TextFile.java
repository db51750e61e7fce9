package tautlog.desk.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The text of a file that a person wrote and named on the command line. */
final class TextFile {
    private TextFile() {}

    /**
     * Reads the whole file.
     *
     * @param option whose value {@code file} is, for messages
     * @param give what the next line of a message asks for, a whole sentence
     * @throws UsageException if there is no such file, or it is no text
     */
    static String read(String option, Path file, String give) throws IOException, UsageException {
        if (!Files.isRegularFile(file)) {
            throw new UsageException(option + ": there is no file " + file + ".\n  " + give);
        }
        try {
            return Files.readString(file);
        } catch (CharacterCodingException e) {
            throw new UsageException(option + ": " + file + " is no text in UTF-8.\n  " + give);
        }
    }
}
