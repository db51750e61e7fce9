package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A drive of some megabytes that is put in and pulled out again, and keeps what stands on it meanwhile. Linux, as root. */
final class PluggedDrive implements AutoCloseable {
    private final Path medium;
    private final SmallDisk disk;
    private final Path place;

    /** @param folder gets {@code medium}, where the test sees what is on it, and {@code drive}, where the logger does */
    PluggedDrive(Path folder, int megabytes) throws IOException {
        medium = folder.resolve("medium");
        place = Files.createDirectories(folder.resolve("drive"));
        disk = SmallDisk.mount(medium, megabytes);
    }

    SmallDisk disk() {
        return disk;
    }

    /** Where the logger is to look for it. */
    Path place() {
        return place;
    }

    /** The logger's folder on it, seen from beside. */
    Path ours() {
        return medium.resolve("tautlog/upper-landing");
    }

    void plug() throws IOException {
        assertEquals("", SmallDisk.command("mount", "--bind", medium.toString(), place.toString()));
    }

    /** While it may be in use. */
    void pull() throws IOException {
        assertEquals("", SmallDisk.command("umount", "-l", place.toString()));
    }

    /** The names in the logger's folder, sorted; empty when there is none. */
    List<String> names() throws IOException {
        return names(ours());
    }

    static List<String> names(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Override
    public void close() throws IOException {
        SmallDisk.command("umount", "-l", place.toString()); // says so when it is not in
        disk.close();
    }
}
