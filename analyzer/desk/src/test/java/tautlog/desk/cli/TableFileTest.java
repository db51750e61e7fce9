package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.progress.Kept;

class TableFileTest {
    @TempDir
    Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void whatStoodUnderItsNameStaysUntilTheTableIsWhole() throws IOException {
        Path file = Files.writeString(folder.resolve("t.csv"), "before");
        TableFile table = TableFile.of(file);
        Files.writeString(table.begin(), "after");
        assertEquals("before", Files.readString(file));

        table.whole();

        assertEquals("after", Files.readString(file));
        assertEquals(List.of("t.csv"), names());
    }

    @Test
    void nothingIsLeftOfATableThatIsNotWhole() throws IOException {
        Path file = folder.resolve("t.csv");
        TableFile table = TableFile.of(file);
        assertEquals(Kept.NOTHING, table.discard(), "not begun");
        Files.writeString(table.begin(), "aft");

        assertEquals(Kept.NOTHING, table.discard());

        assertEquals(List.of(), names());
    }

    /** What a link points to may be anything; taking its place would break it. */
    @Test
    void aLinkIsWrittenThroughAndThenNotTakenBack() throws IOException {
        Path file = Files.writeString(folder.resolve("t.csv"), "before");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), file);
        TableFile table = TableFile.of(link);
        Files.writeString(table.begin(), "aft");

        assertEquals(Kept.PART_OF_TABLE, table.discard());
        table.whole();

        assertTrue(Files.isSymbolicLink(link));
        assertEquals("aft", Files.readString(file));
    }

    /** What somebody keeps under a name like that of a part is not ours: neither overwritten nor taken away. */
    @Test
    void whatStandsBesideTheTableStays() throws IOException {
        Path file = folder.resolve("t.csv");
        Files.writeString(folder.resolve("t.csv-part"), "mine");
        TableFile first = TableFile.of(file);
        TableFile second = TableFile.of(file);
        Files.writeString(first.begin(), "first");
        Files.writeString(second.begin(), "second");

        second.discard();
        first.whole();
        first.discard();

        assertEquals("first", Files.readString(file));
        assertEquals("mine", Files.readString(folder.resolve("t.csv-part")));
        assertEquals(List.of("t.csv", "t.csv-part"), names());
    }

    @Test
    void aWriteProtectedTableIsRefusedBeforeTheWork() throws IOException {
        Path file = Files.writeString(folder.resolve("t.csv"), "before");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r-----"));

        Desk run = Desk.run("export", folder.resolve("none.tautlog"), "--csv", file);

        assertEquals(3, run.code(), run.err());
        assertTrue(run.err().startsWith(file + ": access was denied."), run.err());
        assertEquals("before", Files.readString(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-rw----", "rw-------", "rw-rw-rw-", "rwxr-xr-x"})
    void theTableHasThePermissionsOfWhatItReplaces(String permissions) throws IOException {
        Path file = Files.writeString(folder.resolve("t.csv"), "before");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
        TableFile table = TableFile.of(file);
        Path part = Files.writeString(table.begin(), "after");
        Set<PosixFilePermission> mostMeanwhile = Files.getPosixFilePermissions(file);
        assertTrue(mostMeanwhile.containsAll(Files.getPosixFilePermissions(part)));

        table.whole();

        assertEquals("after", Files.readString(file));
        assertEquals(permissions, PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }

    @Test
    void aNewTableHasThePermissionsOfAnyNewFile() throws IOException {
        Path other = Files.writeString(folder.resolve("other"), "");
        TableFile table = TableFile.of(folder.resolve("t.csv"));
        table.begin();

        table.whole();

        assertEquals(Files.getPosixFilePermissions(other), Files.getPosixFilePermissions(folder.resolve("t.csv")));
    }

    @Test
    void aTableWithASecondNameIsWrittenUnderBoth() throws IOException {
        Path file = Files.writeString(folder.resolve("t.csv"), "before");
        Path second = Files.createLink(folder.resolve("second.csv"), file);
        TableFile table = TableFile.of(file);
        Files.writeString(table.begin(), "after");

        table.whole();

        assertEquals("after", Files.readString(second));
        assertEquals(List.of("second.csv", "t.csv"), names());
    }

    /** A folder took the name meanwhile: that stays, the part does not, and the message names the table. */
    @Test
    void aTableThatCannotTakeItsNameIsTakenAway() throws IOException {
        Path file = folder.resolve("t.csv");
        TableFile table = TableFile.of(file);
        Files.writeString(table.begin(), "after");
        table.flush();
        Files.createDirectory(file);

        IOException thrown = assertThrows(IOException.class, table::whole);

        String message = String.valueOf(thrown.getMessage());
        assertTrue(message.startsWith(file + ": "), message);
        assertFalse(message.contains("-part"), message);
        assertEquals(List.of("t.csv"), names());
    }

    @Test
    void aTableInNoFolderIsNamedByItsOwnName() {
        Path table = folder.resolve("none").resolve("t.csv");

        Desk run = Desk.run("export", folder, "--csv", table);

        assertEquals(3, run.code(), run.err());
        assertTrue(run.err().startsWith(table + ": there is no such file or folder."), run.err());
    }

    /** Near the longest name that common file systems take, 255 bytes. */
    @Test
    void aLongNameIsNoTrouble() throws IOException {
        Path file = folder.resolve("n".repeat(251) + ".csv");
        TableFile table = TableFile.of(file);
        Files.writeString(table.begin(), "after");

        table.whole();

        assertEquals(List.of(file.getFileName().toString()), names());
    }

    @Test
    void anExportThatFailsLeavesWhatWasThere() throws IOException {
        Path table = Files.writeString(folder.resolve("t.csv"), "before");
        Path none = folder.resolve("none.tautlog");

        Desk run = Desk.run("export", none, "--csv", table);

        assertEquals(3, run.code(), run.err());
        assertEquals("before", Files.readString(table));
        assertEquals(List.of("t.csv"), names());
    }

    @Test
    void aDeviceTakesATable() throws IOException {
        Path recording = SampleDay.write(folder);

        Desk run = Desk.run("export", recording, "--csv", "/dev/null", "--seconds");

        assertEquals(0, run.code(), run.err());
        assertFalse(Files.isRegularFile(Path.of("/dev/null")));
    }
}
