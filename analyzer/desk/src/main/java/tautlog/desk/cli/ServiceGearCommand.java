package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.desk.gear.GearJson;
import tautlog.desk.gear.GearPage;
import tautlog.desk.gear.UsedGear;
import tautlog.desk.page.Document;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.Screen;
import tautlog.desk.page.TextPage;
import tautlog.desk.service.KnownGear;
import tautlog.desk.service.LedgerDoubts;
import tautlog.desk.use.UseHistory;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;
import tautlog.service.Ledger;

/** The life of every piece of gear. */
@Command(
        name = "gear",
        headerHeading = "Examples:%n"
                + "  tautlog service gear recordings/ --ledger ledger.jsonl%n"
                + "  tautlog service gear recordings/ --ledger ledger.jsonl --html gear.html%n"
                + "%n",
        header = "What each piece of gear carried, what is out of service, rope and driveline.",
        description = {
            "",
            "Gear that was overloaded stays out of service until an inspection by a named competent",
            "person stands in the ledger. Identical pieces are told apart only where the ledger does.",
            "Exit 3 when a recording, an outing or a block of one, or a line of the ledger could not be",
            "read and was left out.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceGearCommand implements Callable<Integer>, Inked {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--ledger", paramLabel = "F", description = "The ledger, ledger.jsonl.")
    private @Nullable Path ledger;

    @Option(
            names = "--html",
            paramLabel = "F",
            description = "Write a page with drawings too; - for the standard output.")
    private @Nullable String html;

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(names = "--units", paramLabel = "UNIT", description = "kN, daN, kgf, t or lbf instead of the rig's.")
    private @Nullable String units;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of the page instead of this computer's.")
    private @Nullable String zone;

    @Mixin
    private UseOptions use = new UseOptions();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException {
        boolean isTaken = html != null && Output.isStandard(html);
        if (json && isTaken) {
            throw new UsageException("--json and --html -: only one of them can go to the standard output.\n"
                    + "  Give the other a file.");
        }
        ZoneId at = zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
        Optional<ForceUnit> asked = units == null ? Optional.empty() : Optional.of(ScreenUnit.of("--units", units));
        Ledger kept = ledger == null ? Ledger.EMPTY : NamedLedger.read(ledger, at, Instant.now());
        UseHistory history =
                UseHistory.of(files, use.settings(ink, spec.commandLine().getErr()));
        var rigs = history.latestRigs();
        UsedGear gear = UsedGear.of(history.outings(), rigs, kept, at);
        ForceUnit unit = asked.orElseGet(
                () -> rigs.values().stream().findFirst().map(Rig::units).orElse(ForceUnit.KN));
        LedgerDoubts doubts = new LedgerDoubts(kept, KnownGear.ofRigs(gear.kinds()));
        write(gear, notes(gear, history), doubts, new Screen(unit, at, true, true), isTaken);
        return Exits.whole(history.leftOut(), kept, spec.commandLine().getErr());
    }

    private static List<String> notes(UsedGear gear, UseHistory history) {
        List<String> notes = new ArrayList<>(gear.notes());
        history.leftOut().sentences().forEach(sentence -> notes.add("Left out: " + sentence));
        notes.addAll(history.notes());
        return notes;
    }

    private void write(UsedGear gear, List<String> notes, LedgerDoubts doubts, Screen screen, boolean isTaken)
            throws IOException, UsageException {
        Optional<String> name = Optional.ofNullable(ledger).map(Path::toString);
        Document page = doubts.onTopOf(GearPage.of(gear.winches(), screen, name, notes));
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(GearJson.render(gear.winches(), name, doubts.sentences(), notes));
        } else if (!isTaken) {
            out.print(TextPage.render(page, ink));
        }
        out.flush();
        if (html != null) {
            try (Writer writer = Output.open("--html", html, out)) {
                writer.write(HtmlPage.render(page));
            }
        }
    }
}
