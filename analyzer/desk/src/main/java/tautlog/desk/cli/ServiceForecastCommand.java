package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.desk.page.Ink;
import tautlog.desk.page.TextPage;
import tautlog.desk.service.Calendar;
import tautlog.desk.service.ForecastJson;
import tautlog.desk.service.ForecastPage;
import tautlog.desk.service.ServiceState;

/** When tasks will be due. */
@Command(
        name = "forecast",
        headerHeading = "Examples:%n"
                + "  tautlog service forecast recordings/ --tasks service.toml --ledger ledger.jsonl%n"
                + "  tautlog service forecast recordings/ --tasks service.toml --ledger ledger.jsonl --ics service.ics%n"
                + "%n",
        header = "When each task will be due, by the use of the last weeks.",
        description = {
            "",
            "From the use of the last whole weeks (12 at most), with the days between which 95 %% of",
            "the outcomes lie if the next weeks are like them. With fewer than three weeks of use",
            "nothing is said. The calendar has each task on its earliest day.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceForecastCommand implements Callable<Integer>, Inked {
    @Mixin
    private ServiceSources sources = new ServiceSources();

    @Option(
            names = "--ics",
            paramLabel = "F",
            description = "Write a calendar (iCalendar) too; - for the standard output.")
    private @Nullable String ics;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        boolean calendarOnly = ics != null && Output.isStandard(ics);
        if (sources.json() && calendarOnly) {
            throw new UsageException("--json and --ics -: only one of them can go to the standard output.\n  Give the"
                    + " calendar a file.");
        }
        ServiceState state = sources.read(ink, spec.commandLine().getErr()).state();
        if (ics != null) {
            write(state, ics);
        }
        PrintWriter out = spec.commandLine().getOut();
        if (sources.json()) {
            out.print(ForecastJson.render(state));
        } else if (!calendarOnly) {
            out.print(TextPage.render(ForecastPage.of(state), ink));
        }
        out.flush();
        return ServiceSources.whole(state, spec.commandLine().getErr());
    }

    private void write(ServiceState state, String file) throws IOException, UsageException {
        PrintWriter err = spec.commandLine().getErr();
        Optional<String> calendar = Calendar.render(state);
        if (calendar.isPresent()) {
            try (Writer writer = Output.open("--ics", file, spec.commandLine().getOut())) {
                writer.write(calendar.get());
            }
        } else {
            err.println("--ics: no task has a day: there is no calendar to write."
                    + (Output.isStandard(file) ? "" : " " + file + " is as it was."));
        }
        Calendar.leftOut(state).forEach(task -> err.println("not in the calendar: " + task));
        err.flush();
    }
}
