package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Question;
import tautlog.desk.analysis.QuestionException;
import tautlog.desk.hours.HoursJson;
import tautlog.desk.hours.HoursPage;
import tautlog.desk.hours.HoursTable;
import tautlog.desk.page.Ink;
import tautlog.desk.page.TextPage;
import tautlog.desk.report.Report;

/** Hour meters and load bands. */
@Command(
        name = "hours",
        headerHeading = "Examples:%n"
                + "  tautlog hours recordings/%n"
                + "  tautlog hours recordings/ season-2025/ --json%n"
                + "%n",
        header = "Hour meters and load bands, by outing, day and in all.",
        description = {
            "",
            "Meters of shaft and pulls and the time in each band of the limit: by outing, by day and",
            "in all. A copied recording is not counted twice. Exit 3 when a recording, an outing or a",
            "block of one could not be read and was left out.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class HoursCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of the days instead of this computer's.")
    private @Nullable String zone;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, QuestionException {
        ZoneId at = zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
        PrintWriter out = spec.commandLine().getOut();
        try (History history = History.open(files)) {
            Analysis analysis = Analysis.of(history, Question.AS_RECORDED);
            HoursTable table = HoursTable.of(analysis.studies(), at);
            Report report = analysis.report();
            out.print(
                    json
                            ? HoursJson.render(table, report.leftOut())
                            : TextPage.render(HoursPage.of(table, at, notes(report)), Ink.PLAIN));
            return Exits.whole(report.leftOut(), spec.commandLine().getErr());
        }
    }

    private static List<String> notes(Report report) {
        List<String> notes = new ArrayList<>();
        report.leftOut().sentences().forEach(sentence -> notes.add("Left out: " + sentence));
        notes.addAll(report.notes());
        return notes;
    }
}
