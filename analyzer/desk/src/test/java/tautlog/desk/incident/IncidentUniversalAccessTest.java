package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.pdf.UniversalAccess;

/** The PDF of an incident, and of a report, held against PDF/UA-1 by a validator that is not ours. */
class IncidentUniversalAccessTest {
    @TempDir
    Path folder;

    @Test
    void theIncidentPdfFailsNoClause() throws Exception {
        Path recording = SampleDay.write(folder);
        Path pdf = folder.resolve("incident.pdf");
        Desk run = Desk.run("incident", recording, "--at", "2026-05-04T07:00:27Z", "--pdf", pdf);
        assertEquals(0, run.code(), run.err());

        assertEquals(Map.of(), UniversalAccess.failures(pdf));
    }

    @Test
    void aPdfWithoutATitleOfItsOwnAndWithoutTagsFails() throws Exception {
        Path recording = SampleDay.write(folder);
        Path pdf = folder.resolve("incident.pdf");
        Desk.run("incident", recording, "--at", "2026-05-04T07:00:27Z", "--pdf", pdf);
        Path bare = folder.resolve("bare.pdf");
        try (PDDocument paper = Loader.loadPDF(pdf.toFile())) {
            paper.getDocumentCatalog().getCOSObject().removeItem(COSName.STRUCT_TREE_ROOT);
            paper.getDocumentCatalog().getCOSObject().removeItem(COSName.METADATA);
            paper.save(bare.toFile());
        }

        String failures = UniversalAccess.failures(bare).keySet().toString();

        assertTrue(failures.contains("7.1-11"), failures); // no structure tree
        assertTrue(failures.contains("5-1") || failures.contains("7.1-8"), failures); // no metadata
    }

    @Test
    void theReportPdfFailsNoClause() throws Exception {
        Path recording = SampleDay.write(folder);
        Path pdf = folder.resolve("report.pdf");
        assertEquals(0, Desk.run("report", recording, "--pdf", pdf).code());

        assertEquals(Map.of(), UniversalAccess.failures(pdf));
    }
}
