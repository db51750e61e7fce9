package tautlog.logger.installed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tautlog.logger.cli.Mandatory;
import tautlog.logger.config.Installation;
import tautlog.logger.config.LoggerConfig;

/** What is in the package, for each kind of board. Debian's dpkg unpacks it. */
class PackageContentsIT {
    @TempDir
    Path unpacked;

    @BeforeEach
    void unpack() throws IOException {
        try {
            Ran.command("dpkg-deb", "-R", DebianRoot.builtPackage().toString(), unpacked.toString())
                    .wellDone();
        } catch (IOException noDpkg) {
            Mandatory.skip("looking into the package takes dpkg: " + noDpkg.getMessage());
        }
    }

    /** Machine numbers: EM_X86_64 62, EM_AARCH64 183, EM_ARM 40 (elf.h); class 2 is 64 bit. */
    @ParameterizedTest
    @CsvSource({"amd64, 62, 2", "arm64, 183, 2", "armhf, 40, 1"})
    void librariesOfEachArchitectureAreInside(String architecture, int machine, int bits) throws IOException {
        Path folder = unpacked.resolve("usr/lib/tautlog/native").resolve(architecture);
        try (Stream<Path> libraries = Files.list(folder)) {
            List<Path> all = libraries.sorted().toList();
            assertEquals(
                    List.of("libjSerialComm.so", "libjnidispatch.so", "libsqlitejdbc.so"),
                    all.stream().map(path -> path.getFileName().toString()).toList());
            for (Path library : all) {
                ByteBuffer elf = ByteBuffer.wrap(Files.readAllBytes(library)).order(ByteOrder.LITTLE_ENDIAN);
                assertEquals(0x464C457F, elf.getInt(0), library.toString());
                assertEquals(bits, elf.get(4), library.toString());
                assertEquals(machine, elf.getShort(18), library.toString());
                if (architecture.equals("armhf")) { // EF_ARM_ABI_FLOAT_HARD
                    assertTrue((elf.getInt(36) & 0x400) != 0, library + " is not for hard float");
                }
            }
        }
    }

    @Test
    void everyLibraryOfTheProgramIsInsideAndNamedWithItsLicence() throws IOException {
        Path target = Path.of(System.getProperty("tautlog.root"), "logger", "target");
        TreeSet<String> jars = jars(target.resolve("lib"));
        assertEquals(jars, jars(unpacked.resolve("usr/share/tautlog/lib")));

        String notice = Files.readString(unpacked.resolve("usr/share/doc/tautlog/THIRD-PARTY.txt"));
        for (String jar : jars) {
            String artifact = jar.replaceAll("-[0-9].*", "");
            assertTrue(notice.contains(":" + artifact + ":"), artifact);
        }
    }

    private static TreeSet<String> jars(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(path -> path.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @Test
    void theExampleConfigurationIsOneThatTheLoggerTakes() throws Exception {
        Path example = unpacked.resolve("etc/tautlog/logger.toml");
        for (String name : List.of("rig.toml", "calibration.toml")) {
            Files.copy(unpacked.resolve("usr/share/doc/tautlog/examples").resolve(name), example.resolveSibling(name));
        }

        LoggerConfig config = Installation.load(example).config();

        assertEquals(Path.of("/var/lib/tautlog/recordings"), config.recordings());
        assertEquals(Optional.of(Path.of("/media/tautlog")), config.drive());
        assertEquals("/etc/tautlog/logger.toml\n", Files.readString(unpacked.resolve("DEBIAN/conffiles")));
    }

    @Test
    void aDriveIsMountedWhereTheLoggerLooksAndMayWrite() throws IOException {
        Path units = unpacked.resolve("usr/lib/systemd/system");

        String mount = Files.readString(units.resolve("media-tautlog.mount"));
        assertTrue(mount.contains("Where=/media/tautlog\n") && mount.contains("by-label/TAUTLOG\n"), mount);
        String rules = Files.readString(unpacked.resolve("usr/lib/udev/rules.d/61-tautlog-drive.rules"));
        assertTrue(rules.contains("\"TAUTLOG\"") && rules.contains("\"media-tautlog.mount\""), rules);
        String service = Files.readString(units.resolve("tautlogd.service"));
        assertTrue(service.contains("ReadWritePaths=-/media/tautlog\n"), service);
    }

    @Test
    void scriptsAreSound() throws IOException {
        List<String> words = Stream.of(
                        "DEBIAN/postinst",
                        "DEBIAN/prerm",
                        "DEBIAN/postrm",
                        "usr/bin/tautlogd",
                        "usr/lib/tautlog/make-archive",
                        "usr/lib/tautlog/put-ahead",
                        "usr/share/doc/tautlog/firmware-notes/board.sh")
                .map(path -> unpacked.resolve(path).toString())
                .collect(Collectors.toList());
        words.addAll(0, Arrays.asList("shellcheck", "--shell=sh"));
        try {
            Ran.command(words).wellDone();
        } catch (IOException missing) {
            Mandatory.skip("checking the package's scripts takes shellcheck: " + missing.getMessage());
        }
    }
}
