package tautlog.desk.use;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;

/** Changes a file's bytes so that it looks as before from outside: only who opens it notices. */
final class Unseen {
    private Unseen() {}

    /** Makes zeros of it, which are no recording. */
    static void spoil(Path file) throws IOException {
        write(file, new byte[(int) Files.size(file)]);
    }

    /** @param bytes as many as there are */
    static void write(Path file, byte[] bytes) throws IOException {
        FileTime written = Files.getLastModifiedTime(file);
        Files.write(file, bytes);
        Files.setLastModifiedTime(file, written);
    }
}
