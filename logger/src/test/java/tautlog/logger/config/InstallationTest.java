package tautlog.logger.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.logger.LoggerFolder;
import tautlog.sample.Calibration;

class InstallationTest {
    @TempDir
    Path folder;

    @Test
    void readsConfigurationRigAndCalibration() throws IOException, ConfigException {
        // given
        LoggerFolder logger = LoggerFolder.at(folder, "/dev/ttyACM0", LoggerFolder.HOST_CLOCK);

        // when
        Installation installation = logger.installation();

        // then
        assertEquals("upper-landing", installation.rig().winch());
        assertEquals(LoggerFolder.RIG, installation.rigToml());
        assertEquals(0.01, installation.cellCalibration().response().newtons(1));
    }

    @Test
    void readsTheShippedExamplesForInstrumentsThatPeopleOwn() throws ConfigException {
        Path samples = Path.of(System.getProperty("tautlog.root"), "samples");

        assertEquals(
                List.of("text", "modbus"),
                List.of(
                        Installation.load(samples.resolve("logger-text.toml"))
                                .config()
                                .instrument()
                                .word(),
                        Installation.load(samples.resolve("logger-modbus.toml"))
                                .config()
                                .instrument()
                                .word()));
    }

    @Test
    void readsTheCalibrationFromAFileOfItsOwn() throws IOException, ConfigException {
        // given
        LoggerFolder logger = LoggerFolder.at(folder, "/dev/ttyACM0", LoggerFolder.HOST_CLOCK);
        Files.writeString(folder.resolve("cal.toml"), "schema = 1\nzero_counts = 120.5\nnewtons_per_count = 0.02\n");
        Files.writeString(
                logger.config(),
                Files.readString(logger.config()).replaceAll("(?s)zero_counts.*", "file = \"cal.toml\"\n"));

        // then
        assertEquals(
                Calibration.of("120.5", "0.02"),
                logger.installation().cellCalibration().response());
    }

    @Test
    void dividesByWhatTheCellSeesOfTheTension() throws IOException, ConfigException {
        // given: at a fairlead sheave with the lines in one direction the cell carries twice the tension (2 cos 0)
        LoggerFolder logger = LoggerFolder.at(folder, "/dev/ttyACM0", LoggerFolder.HOST_CLOCK);
        Files.writeString(
                folder.resolve("rig.toml"),
                LoggerFolder.RIG.replace(
                        "[[gear]]", "[cell]\nat = \"fairlead\"\nangle_between_lines_deg = 0\n[[gear]]"));

        // then
        assertEquals(0.005, logger.installation().lineCalibration().newtons(1), 1e-18);
        assertEquals(
                Calibration.of("0", "0.01"),
                logger.installation().cellCalibration().response());
    }

    @Test
    void tellsTheProblemsOfAllFilesAtOnce() throws IOException {
        // given
        LoggerFolder logger = LoggerFolder.at(folder, "/dev/ttyACM0", LoggerFolder.HOST_CLOCK);
        Files.writeString(folder.resolve("rig.toml"), LoggerFolder.RIG.replace("wll", "wl"));
        Files.writeString(
                logger.config(),
                Files.readString(logger.config()).replaceAll("(?s)zero_counts.*", "file = \"cal.toml\"\n"));

        // when
        List<Problem> problems =
                assertThrows(ConfigException.class, logger::installation).problems();

        // then
        assertEquals(
                List.of("cal.toml", "rig.toml"),
                problems.stream()
                        .map(p -> Path.of(p.file()).getFileName().toString())
                        .distinct()
                        .sorted()
                        .toList());
    }

    @Test
    void saysWhenTheConfigurationItselfIsNotThere() {
        ConfigException missing =
                assertThrows(ConfigException.class, () -> Installation.load(folder.resolve("logger.toml")));

        assertEquals("this file is not there", missing.problems().get(0).found());
    }
}
