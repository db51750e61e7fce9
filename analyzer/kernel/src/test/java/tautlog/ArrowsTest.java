package tautlog;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** Holds the arrows between the kernel's rooms, as DEVELOPERS.md draws them. */
class ArrowsTest {
    private static final JavaClasses KERNEL = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tautlog");

    @Test
    void kernelKnowsNeitherProgram() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("tautlog.logger..", "tautlog.desk..")
                .check(KERNEL);
    }

    @Test
    void roomsHaveNoCycles() {
        slices().matching("tautlog.(*)..").should().beFreeOfCycles().check(KERNEL);
    }

    @Test
    void onlyTheRecordingTouchesFilesAndTheDatabase() {
        noClasses()
                .that()
                .resideOutsideOfPackage("tautlog.recording..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.sql..", "org.sqlite..", "java.nio.file..", "java.net..")
                .check(KERNEL);
    }

    @Test
    void onlyTheConfigurationReadsToml() {
        noClasses()
                .that()
                .resideOutsideOfPackage("tautlog.config..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.tomlj..")
                .check(KERNEL);
    }

    @Test
    void detectorsUseTheJdkAndTheKernelOnly() {
        classes()
                .that()
                .resideInAnyPackage("tautlog.detect..", "tautlog.fatigue..", "tautlog.sample..", "tautlog.usage..")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "tautlog..", "org.jspecify..")
                .check(KERNEL);
    }
}
