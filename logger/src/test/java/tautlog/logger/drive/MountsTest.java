package tautlog.logger.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines in the form of proc(5), {@code /proc/pid/mountinfo}. */
class MountsTest {
    private static final String ROOT = "22 1 179:2 / / rw,relatime shared:1 - ext4 /dev/mmcblk0p2 rw\n";
    private static final String STICK =
            "40 39 8:1 / /media/tautlog rw,nosuid shared:9 master:2 - vfat /dev/sda1 rw,uid=107\n";

    @TempDir
    Path folder;

    private Optional<String> driveAt(String place, String table) throws IOException {
        Path file = folder.resolve("mountinfo");
        Files.write(file, table.getBytes(StandardCharsets.UTF_8));
        return new Mounts(file).drive(Path.of(place)).map(mount -> mount.device() + " " + mount.type());
    }

    @Test
    void seesADriveThatIsMountedThere() throws IOException {
        assertEquals(Optional.of("8:1 vfat"), driveAt("/media/tautlog", ROOT + STICK));
        assertEquals(Optional.of("8:1 vfat"), driveAt("/media/x/../tautlog/", ROOT + STICK));
    }

    @Test
    void seesNoneInAnEmptyFolderNorBelowOrAboveADrive() throws IOException {
        assertEquals(Optional.empty(), driveAt("/media/tautlog", ROOT));
        assertEquals(Optional.empty(), driveAt("/media/tautlog/recordings", ROOT + STICK));
        assertEquals(Optional.empty(), driveAt("/media", ROOT + STICK));
        assertEquals(Optional.empty(), driveAt("/media/tautlog", ""));
    }

    @Test
    void takesAFolderBoundOntoItselfForNoDrive() throws IOException {
        // as a service manager does that makes all else read-only
        String bound = "39 22 179:2 /media/tautlog /media/tautlog rw,relatime - ext4 /dev/mmcblk0p2 rw\n";

        assertEquals(Optional.empty(), driveAt("/media/tautlog", ROOT + bound));
        assertEquals(Optional.of("8:1 vfat"), driveAt("/media/tautlog", ROOT + bound + STICK));
        assertEquals(Optional.of("8:1 vfat"), driveAt("/media/tautlog", ROOT + STICK + bound));
    }

    @Test
    void asksNobodyToMountOnDemand() throws IOException {
        String onDemand = "39 22 0:50 / /media/tautlog rw,relatime - autofs systemd-1 rw,fd=51\n";

        assertEquals(Optional.empty(), driveAt("/media/tautlog", ROOT + onDemand));
        assertEquals(Optional.of("8:1 vfat"), driveAt("/media/tautlog", ROOT + onDemand + STICK));
    }

    @Test
    void readsPlacesWithSpacesAndLettersOfAnyKind() throws IOException {
        String spaced = "40 22 8:1 / /media/an\\040ä\\134b rw - exfat /dev/sda1 rw\n";

        assertEquals(Optional.of("8:1 exfat"), driveAt("/media/an ä\\b", ROOT + spaced));
        assertEquals(Optional.of("8:1 vfat"), driveAt("/media/tautlog", ROOT + spaced + "torn line\n" + STICK));
    }
}
