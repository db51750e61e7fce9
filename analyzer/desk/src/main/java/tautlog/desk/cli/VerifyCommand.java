package tautlog.desk.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.desk.analysis.GivenRecordings;
import tautlog.desk.cli.KeptLinks.Held;
import tautlog.desk.page.Screen;
import tautlog.desk.progress.Kept;
import tautlog.desk.progress.WhenStopped;
import tautlog.desk.report.JsonFields;
import tautlog.recording.Damage;
import tautlog.recording.NotedLink;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.Verification;

/** Whether recordings are what was written. */
@Command(
        name = "verify",
        headerHeading = "Examples:%n"
                + "  tautlog verify recordings/%n"
                + "  tautlog verify upper-landing_2026-05-04.tautlog --json%n"
                + "  tautlog verify recordings/ --against last-links.txt%n"
                + "%n",
        header = "Checksums, hash chain and gaps of each recording.",
        description = {
            "",
            "Checks every block's checksum, the hash chain and the gaps of each recording. The",
            "chain proves something only against a link that was kept elsewhere: compare the last",
            "link, or give the text that keeps them with --against. Exit 3 when anything is damaged,",
            "copied without the -wal file that holds its newest rows, or contradicted by a kept link.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class VerifyCommand implements Callable<Integer> {
    /** Chosen: more gaps than this are counted, not listed. */
    private static final int MOST_GAPS = 20;

    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them.")
    private List<Path> files = List.of();

    @Option(
            names = "--against",
            paramLabel = "F",
            description = "A text with links that were kept elsewhere, as the logger writes it on a drive.")
    private Optional<Path> against = Optional.empty();

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    /** A recording and what was found; {@code found} is empty when it cannot be opened, and {@code problem} says why. */
    private record Checked(Path file, Optional<Verification> found, String problem) {
        boolean isIntact() {
            return found.map(Verification::isIntact).orElse(false);
        }
    }

    @Override
    public Integer call() throws IOException, UsageException {
        List<NotedLink> links = against.isPresent() ? KeptLinks.read(against.get()) : List.of();
        List<Path> given = GivenRecordings.in(files);
        List<Checked> all = new ArrayList<>();
        List<Held> held;
        WhenStopped stopped = Watched.saying(Kept.NOTHING, spec.commandLine().getErr());
        try {
            given.forEach(file -> all.add(check(file)));
            held = KeptLinks.hold(links, given);
        } finally {
            stopped.workIsOver();
        }
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(json(all, held));
        } else {
            all.forEach(checked -> text(out, checked));
            held.forEach(link -> out.println(link.sentence()));
        }
        boolean isWhole =
                all.stream().allMatch(Checked::isIntact) && held.stream().noneMatch(Held::isContradicted);
        return isWhole ? Exits.DONE : Exits.UNUSABLE;
    }

    private static Checked check(Path file) {
        try (Recording recording = Recording.open(file)) {
            return new Checked(file, Optional.of(recording.verify()), "");
        } catch (RecordingException e) {
            return new Checked(file, Optional.empty(), String.valueOf(e.getMessage()));
        }
    }

    private static void text(PrintWriter out, Checked checked) {
        if (checked.found().isEmpty()) {
            out.println(checked.file() + ": CANNOT BE READ");
            out.println("  " + checked.problem());
            return;
        }
        Verification found = checked.found().get();
        out.println(checked.file() + ": " + word(found));
        out.println("  winch " + found.winch() + ", "
                + Screen.counted(found.outings().size(), "outing") + ", "
                + Screen.counted(found.samples(), "sample") + " in " + Screen.counted(found.blocks(), "row")
                + " of evidence");
        found.lost()
                .forEach(outing -> out.println(
                        "  LOST outing " + (outing.index() + 1) + ", " + outing.extent() + ": " + outing.reason()));
        found.thinned().forEach(outing -> out.println(thinned(outing)));
        found.damages().forEach(damage -> out.println("  DAMAGE " + damage.summary()));
        if (!found.isIntact()) {
            out.println(
                    "  Copy it again from the board if it is still there, with the -wal file beside it. Reports take what is damaged as a gap,"
                            + " and leave a lost outing out.");
        }
        out.println("  " + Screen.counted(found.gaps().size(), "gap") + " in the sample numbers");
        found.gaps().stream().limit(MOST_GAPS).forEach(gap -> out.println(gap(gap)));
        if (found.gaps().size() > MOST_GAPS) {
            out.println("    … all of them with --json");
        }
        out.println("  last link " + found.lastLink());
        out.println("  Compare it with one kept elsewhere: who can rewrite the file can rewrite the chain.");
    }

    private static String word(Verification found) {
        return found.isIntact() ? "intact" : found.damages().isEmpty() ? "INCOMPLETE" : "DAMAGED";
    }

    private static String thinned(Verification.Thinned outing) {
        return "  THINNED outing " + (outing.outing() + 1) + ", " + outing.time()
                + ", because the disk was nearly full: "
                + Screen.counted(outing.samples(), "sample") + " of " + Screen.counted(outing.blocks(), "block")
                + " are gone, their headers, SHA-256 and links are kept; nothing but pulls had been found in them";
    }

    private static String gap(Verification.Gap gap) {
        return "    outing " + (gap.outing() + 1) + ": " + gap.missing() + " missing after sample " + gap.afterNumber()
                + ", readings again from " + gap.time();
    }

    private static String json(List<Checked> all, List<Held> held) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            JsonFields fields = new JsonFields(writer);
            fields.begin();
            fields.whole("schema", 1);
            fields.list("recordings", all, checked -> recording(fields, checked));
            fields.list("kept_links", held, link -> {
                fields.text("noted", link.noted().at().toString());
                fields.text("file", link.noted().file());
                fields.text("link", link.noted().link());
                fields.text("found_in", link.foundIn().map(Path::toString));
                fields.flag("contradicted", link.isContradicted());
            });
            fields.end();
        }
        return text.toString();
    }

    private static void recording(JsonFields fields, Checked checked) throws IOException {
        Optional<Verification> found = checked.found();
        fields.text("file", checked.file().toString());
        fields.flag("intact", checked.isIntact());
        fields.text("problem", checked.problem().isEmpty() ? Optional.empty() : Optional.of(checked.problem()));
        fields.text("winch", found.map(Verification::winch));
        fields.whole("outings", found.map(v -> v.outings().size()).orElse(0));
        fields.whole("samples", found.map(Verification::samples).orElse(0L));
        fields.list("outings_lost", found.map(Verification::lost).orElse(List.of()), outing -> {
            fields.whole("outing", outing.index() + 1L);
            fields.text("reason", outing.reason());
            fields.whole("samples", outing.samples());
        });
        fields.list("thinned", found.map(Verification::thinned).orElse(List.of()), outing -> {
            fields.whole("outing", outing.outing() + 1L);
            fields.whole("blocks", outing.blocks());
            fields.whole("samples", outing.samples());
            fields.text("time", outing.time());
        });
        fields.list("damages", found.map(Verification::damages).orElse(List.of()), damage -> damage(fields, damage));
        fields.list("gaps", found.map(Verification::gaps).orElse(List.of()), gap -> {
            fields.whole("outing", gap.outing() + 1L);
            fields.whole("after_number", gap.afterNumber());
            fields.whole("missing", gap.missing());
            fields.text("time", gap.time());
        });
        fields.text("last_link", found.map(Verification::lastLink));
    }

    private static void damage(JsonFields fields, Damage damage) throws IOException {
        // null when it cannot be told
        fields.number("outing", damage.outing() < 0 ? Double.NaN : damage.outing() + 1);
        fields.text("place", damage.place());
        fields.whole("first_number", damage.firstNumber());
        fields.whole("last_number", damage.lastNumber());
        fields.text("time", damage.time());
        fields.text("reason", damage.reason());
    }
}
