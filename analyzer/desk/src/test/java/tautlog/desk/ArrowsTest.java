package tautlog.desk;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** Holds the arrows between the desk's rooms, as DEVELOPERS.md draws them. */
class ArrowsTest {
    private static final JavaClasses DESK = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tautlog.desk");

    @Test
    void deskDoesNotKnowTheLogger() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("tautlog.logger..")
                .check(DESK);
    }

    @Test
    void roomsHaveNoCycles() {
        slices().matching("tautlog.desk.(*)..").should().beFreeOfCycles().check(DESK);
    }

    @Test
    void libraryForTheCommandLineStaysInItsRoom() {
        onlyIn("tautlog.desk.cli..", "picocli..");
    }

    @Test
    void librariesForPdfStayInTheirRoom() {
        onlyIn("tautlog.desk.pdf..", "com.openhtmltopdf..");
        onlyIn("tautlog.desk.pdf..", "org.apache.pdfbox..");
        onlyIn("tautlog.desk.pdf..", "org.apache.fontbox..");
    }

    @Test
    void libraryForStatisticsStaysInItsRooms() {
        noClasses()
                .that()
                .resideOutsideOfPackages(
                        "tautlog.desk.calibration..", "tautlog.desk.uncertainty..", "tautlog.desk.service..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.hipparchus..")
                .check(DESK);
    }

    @Test
    void libraryForCsvStaysInItsRooms() {
        noClasses()
                .that()
                .resideOutsideOfPackages(
                        "tautlog.desk.importing..",
                        "tautlog.desk.exporting..",
                        "tautlog.desk.calibration..",
                        "tautlog.desk.hours..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.apache.commons.csv..")
                .check(DESK);
    }

    @Test
    void libraryForParquetStaysInItsRoom() {
        onlyIn("tautlog.desk.exporting.parquet..", "org.apache.parquet..");
        onlyIn("tautlog.desk.exporting.parquet..", "org.apache.hadoop..");
        onlyIn("tautlog.desk.exporting.parquet..", "io.airlift..");
    }

    @Test
    void onlyTheEveningViewListensOnANetwork() {
        onlyIn("tautlog.desk.web..", "com.sun.net..");
        noClasses()
                .that()
                .resideOutsideOfPackages("tautlog.desk.web..", "tautlog.desk.cli..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.net..")
                .check(DESK);
    }

    private static void onlyIn(String room, String library) {
        noClasses()
                .that()
                .resideOutsideOfPackage(room)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(library)
                .check(DESK);
    }
}
