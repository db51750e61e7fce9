package tautlog.logger;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** Holds the arrows between the logger's rooms, as DEVELOPERS.md draws them. */
class ArrowsTest {
    private static final JavaClasses LOGGER = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tautlog.logger");

    @Test
    void loggerDoesNotKnowTheDesk() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("tautlog.desk..")
                .check(LOGGER);
    }

    @Test
    void roomsHaveNoCycles() {
        slices().matching("tautlog.logger.(*)..").should().beFreeOfCycles().check(LOGGER);
    }

    @Test
    void serialLibraryStaysInItsRoom() {
        onlyIn("tautlog.logger.port..", "com.fazecast..");
    }

    @Test
    void nativeCallsStayInTheirRoom() {
        onlyIn("tautlog.logger.pty..", "com.sun.jna..");
    }

    @Test
    void libraryForTheCommandLineStaysInItsRoom() {
        onlyIn("tautlog.logger.cli..", "picocli..");
    }

    @Test
    void libraryForModbusStaysInItsRoom() {
        onlyIn("tautlog.logger.instrument.modbus..", "com.digitalpetri..");
    }

    @Test
    void libraryForMqttStaysInItsRoom() {
        onlyIn("tautlog.logger.publish.mqtt..", "org.eclipse.paho..");
    }

    @Test
    void clientOfInfluxStaysInItsRoom() {
        onlyIn("tautlog.logger.publish.influx..", "com.influxdb..", "okhttp3..", "okio..");
    }

    @Test
    void databaseStaysWithWhatPublishersRemember() {
        onlyIn("tautlog.logger.publish", "java.sql..", "org.sqlite..");
    }

    private static void onlyIn(String room, String... libraries) {
        noClasses()
                .that()
                .resideOutsideOfPackage(room)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(libraries)
                .check(LOGGER);
    }
}
