package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;

class ViewCommandTest {
    @TempDir
    Path folder;

    @Test
    void startsNothingWhenItIsAskedForTheImpossible() {
        Desk noFolder = Desk.run("view", folder.resolve("none"));
        assertEquals(2, noFolder.code());
        assertTrue(noFolder.err().contains("is no folder"), noFolder.err());
        assertEquals(2, Desk.run("view", folder, "--port", "70000").code());
        assertEquals(2, Desk.run("view", folder, "--zone", "Nowhere/Land").code());
        assertEquals(2, Desk.run("view", folder, "--units", "stone").code());
        assertEquals(
                2,
                Desk.run("view", folder, "--rig", folder.resolve("none.toml")).code());
        assertEquals(
                2,
                Desk.run("view", folder, "--calibration", folder.resolve("none.toml"))
                        .code());
    }

    @Test
    void helpBeginsWithTwoExamples() {
        Desk help = Desk.run("view", "--help");
        assertEquals(0, help.code());
        assertTrue(help.out().startsWith("Examples:"), help.out());
    }
}
