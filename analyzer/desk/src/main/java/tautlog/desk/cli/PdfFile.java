package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import tautlog.desk.page.Document;
import tautlog.desk.pdf.PdfPage;
import tautlog.desk.pdf.Sheet;
import tautlog.recording.RecordingName;

/**
 * A PDF file that was asked for.
 *
 * @param created the creation time that it states
 */
record PdfFile(Path target, Instant created) {
    /**
     * What {@code --pdf} and {@code --created} ask for; without the second it is now, and the file differs at every run.
     *
     * @throws UsageException if it would overwrite a recording or go to the standard output, or the time is none
     */
    static Optional<PdfFile> asked(Optional<String> pdf, Optional<String> created) throws UsageException {
        Instant at =
                created.isPresent() ? LocalTime.instant("--created", created.get(), ZoneOffset.UTC) : Instant.now();
        if (pdf.isEmpty()) {
            return Optional.empty();
        }
        String target = pdf.get();
        if (Output.isStandard(target)) {
            throw new UsageException("--pdf: a PDF is no text for the standard output.\n  Name a file.");
        }
        if (target.endsWith(RecordingName.ENDING)) {
            throw new UsageException("--pdf: " + target
                    + " is named like a recording, which is never overwritten.\n  Give the file another ending.");
        }
        return Optional.of(new PdfFile(Path.of(target), at));
    }

    /** @param head on top of every sheet, a line each */
    void write(Document document, List<String> head) throws IOException {
        Files.write(target, PdfPage.render(document, new Sheet(head, created)));
    }
}
