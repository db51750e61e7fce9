package tautlog.logger.installed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.cli.Mandatory;

/** firmware-notes/board.sh on a card in a folder, with a partition in a file. Root, Linux. */
class BoardScriptIT {
    private static final Path SCRIPT = Path.of(System.getProperty("tautlog.root"), "firmware-notes", "board.sh");
    private static final String FSTAB = """
            # by the maker of the image
            proc            /proc           proc    defaults          0       0
            PARTUUID=1-01   /boot/firmware  vfat    defaults          0       2
            PARTUUID=1-02   /               ext4    defaults,commit=30,errors=remount-ro  0       1
            /swapfile       none            swap    sw                0       0
            """;

    @TempDir
    Path folder;

    private Path card = Path.of("");
    private String device = "";
    private String uuid = "";

    @BeforeEach
    void makeCard() throws IOException {
        card = folder.resolve("card");
        file("etc/debian_version", "12.0\n");
        file("etc/fstab", FSTAB);
        file("etc/tautlog/rig.toml", "");
        file("usr/lib/systemd/systemd", "");
        file("usr/lib/systemd/system/tautlogd.service", "");
        Files.createDirectories(card.resolve("etc/systemd/system"));
        try {
            partition("ext4");
        } catch (IOException | AssertionError refused) {
            Mandatory.skip("a partition in a file takes root, losetup and mkfs.ext4: " + refused);
        }
    }

    private void partition(String type) throws IOException {
        loosen();
        Path image = folder.resolve("partition-" + type);
        Ran.command("truncate", "-s", "16M", image.toString()).wellDone();
        List<String> make = type.equals("swap") ? List.of("mkswap") : List.of("mkfs." + type, "-q");
        List<String> words = new ArrayList<>(make);
        words.add(image.toString());
        Ran.command(words).wellDone();
        device = Ran.command("losetup", "--find", "--show", image.toString())
                .wellDone()
                .strip();
        uuid = Ran.command("blkid", "-p", "-s", "UUID", "-o", "value", device)
                .wellDone()
                .strip();
    }

    @AfterEach
    void throwAway() throws IOException {
        loosen();
        for (Map.Entry<String, String> file : everyFile().entrySet()) {
            if (file.getValue().startsWith("-> ")) { // the folder's end would tell of each link that leads outside
                Files.delete(card.resolve(file.getKey()));
            }
        }
    }

    private void loosen() throws IOException {
        if (!device.isEmpty()) {
            Ran.command("losetup", "-d", device);
        }
    }

    private void file(String path, String text) throws IOException {
        Path file = card.resolve(path);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    private Ran script(String... more) throws IOException {
        List<String> words =
                new ArrayList<>(List.of("sh", SCRIPT.toString(), "--data", "UUID=" + uuid, "--root", card.toString()));
        words.addAll(Arrays.asList(more));
        return Ran.command(words);
    }

    private TreeMap<String, String> everyFile() throws IOException {
        TreeMap<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(card)) {
            for (Path path : all.filter(p -> !Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS))
                    .toList()) {
                files.put(
                        card.relativize(path).toString(),
                        Files.isSymbolicLink(path) ? "-> " + Files.readSymbolicLink(path) : Files.readString(path));
            }
        }
        return files;
    }

    private void refuses(String words) throws IOException {
        TreeMap<String, String> before = everyFile();
        Ran ran = script();
        assertEquals(3, ran.code(), ran.said());
        assertTrue(ran.said().contains(words), ran.said());
        assertEquals(before, everyFile());
    }

    @Test
    void makesTheSystemReadOnlyAndGivesRecordingsTheirPartition() throws Exception {
        script().wellDone();

        List<String> lines = everyFile().get("etc/fstab").lines().toList();
        assertTrue(lines.contains("PARTUUID=1-02 / ext4 ro,commit=30,errors=remount-ro,noatime 0 1"), lines::toString);
        assertTrue(lines.contains("PARTUUID=1-01 /boot/firmware vfat ro,noatime 0 2"), lines::toString);
        assertTrue(
                lines.stream().anyMatch(line -> line.startsWith("UUID=" + uuid + " /var/lib/tautlog ext4 ")),
                lines::toString);
        assertTrue(lines.stream().noneMatch(line -> line.startsWith("/swapfile")), lines::toString);
        assertEquals(FSTAB, everyFile().get("etc/fstab.before-tautlog"));
        assertTrue(everyFile().get("etc/systemd/journald.conf.d/tautlog.conf").contains("Storage=volatile"));
        assertEquals("-> /dev/null", everyFile().get("etc/systemd/system/apt-daily.timer"));
        String judged = Ran.command(
                        "findmnt",
                        "--verify",
                        "--tab-file",
                        card.resolve("etc/fstab").toString())
                .said();
        assertTrue(judged.contains("0 parse errors"), judged);
    }

    @Test
    void changesNothingOnItsSecondRun() throws Exception {
        script().wellDone();
        TreeMap<String, String> after = everyFile();

        assertTrue(script().wellDone().contains("nothing to do"));
        assertEquals(after, everyFile());
    }

    @Test
    void dryRunSaysWhatItWouldAndChangesNothing() throws Exception {
        TreeMap<String, String> before = everyFile();

        String said = script("--dry-run").wellDone();

        assertEquals(before, everyFile());
        assertTrue(said.contains("+PARTUUID=1-02 / ext4 ro,commit=30"), said);
        assertTrue(said.contains("would mask apt-daily.timer"), said);
    }

    @Test
    void refusesAPartitionThatHoldsAnythingElse() throws Exception {
        Path at = Files.createDirectories(folder.resolve("at"));
        Ran.command("mount", device, at.toString()).wellDone();
        Files.writeString(at.resolve("photos"), "");
        Ran.command("umount", at.toString()).wellDone();

        refuses("holds \"photos\"");
    }

    @Test
    void refusesAPartitionThatIsNotExt4() throws Exception {
        partition("swap");

        refuses("is swap, not ext4");
    }

    @Test
    void refusesToHideRecordings() throws Exception {
        file("var/lib/tautlog/recordings/hillside_2026-05-04.tautlog", "");

        refuses("there are recordings in");
    }

    @Test
    void refusesSettingsThatLieWithTheRecordings() throws Exception {
        Files.delete(card.resolve("etc/tautlog/rig.toml"));
        Files.delete(card.resolve("etc/tautlog"));
        Files.createDirectories(card.resolve("var/lib/tautlog/settings"));
        Files.createSymbolicLink(card.resolve("etc/tautlog"), Path.of("../var/lib/tautlog/settings"));

        refuses("keep settings apart from history");
    }

    @Test
    void refusesABoardWithoutTheLogger() throws Exception {
        Files.delete(card.resolve("usr/lib/systemd/system/tautlogd.service"));

        refuses("the package tautlog is not installed there");
    }

    @Test
    void refusesWhatItCannotReadOfFstab() throws Exception {
        file("etc/fstab", "proc /proc proc defaults 0 0\n");

        refuses("exactly one line for /");
    }
}
