package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.desk.page.Document;
import tautlog.desk.pdf.PdfPage;
import tautlog.desk.pdf.Sheet;
import tautlog.desk.report.Report;
import tautlog.recording.RecordingName;

/** A page that goes to a PDF file, with the recording and its last link on top of every sheet. */
final class PdfFile {
    /** Chosen: more names would push the page's own text away. */
    private static final int MOST_NAMES = 3;

    private PdfFile() {}

    /** The report's page. */
    static void write(String target, Document document, Report report, Instant created)
            throws IOException, UsageException {
        write(target, document, head(document, report), created);
    }

    /**
     * Any page.
     *
     * @param head on top of every sheet
     * @throws UsageException if it would overwrite a recording, or go to a terminal
     */
    static void write(String target, Document document, List<String> head, Instant created)
            throws IOException, UsageException {
        if (Output.isStandard(target)) {
            throw new UsageException("--pdf: a PDF is no text for the standard output.\n  Name a file.");
        }
        if (target.endsWith(RecordingName.ENDING)) {
            throw new UsageException("--pdf: " + target
                    + " is named like a recording, which is never overwritten.\n  Give the file another ending.");
        }
        Files.write(Path.of(target), PdfPage.render(document, new Sheet(head, created)));
    }

    private static List<String> head(Document document, Report report) {
        List<String> names = report.recordings().stream()
                .map(source -> String.valueOf(Path.of(source.file()).getFileName()))
                .toList();
        List<String> lines = new ArrayList<>();
        lines.add(document.title() + " · "
                + String.join(", ", names.subList(0, Math.min(MOST_NAMES, names.size())))
                + (names.size() > MOST_NAMES ? " and " + (names.size() - MOST_NAMES) + " more recordings" : ""));
        report.trust().lastLink().ifPresent(link -> lines.add("Last link " + link));
        return lines;
    }

    /** What {@code --created} says; without it, now: then the file differs at every run. */
    static Instant created(Optional<String> text) throws UsageException {
        return text.isEmpty() ? Instant.now() : LocalTime.instant("--created", text.get(), java.time.ZoneOffset.UTC);
    }
}
