package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.desk.analysis.GivenRecordings;
import tautlog.desk.page.Screen;
import tautlog.desk.progress.Kept;
import tautlog.desk.progress.WhenStopped;
import tautlog.recording.Packed;
import tautlog.recording.Packer;
import tautlog.recording.RecordingException;

/** Puts recordings away in less room. */
@Command(
        name = "pack",
        headerHeading = "Examples:%n"
                + "  tautlog pack recordings/%n"
                + "  tautlog pack upper-landing_2026-05-04.tautlog%n"
                + "%n",
        header = "Puts recordings that are closed away in less room, without loss.",
        description = {
            "",
            "Codes each recording anew, smaller: all samples, events and links stay as they are, and",
            "every command reads it as before. The packed copy is written beside the recording and",
            "verified to its last link, then takes its place; whatever happens, one of the two is",
            "there. What is being written, damaged, copied without its -wal file, write-protected or",
            "has a second name on the disk (hard link) is left as it is and named; then exit 3. What",
            "is packed already is verified. Programs before this version refuse a packed recording.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class PackCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them.")
    private List<Path> files = List.of();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException {
        List<Path> given = GivenRecordings.in(files);
        WhenStopped stopped = Watched.saying(Kept.EACH_WHOLE, spec.commandLine().getErr());
        try {
            return pack(given);
        } finally {
            stopped.workIsOver();
        }
    }

    private int pack(List<Path> given) {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        long before = 0;
        long after = 0;
        int refused = 0;
        for (Path file : given) {
            try {
                Packed packed = Packer.pack(file);
                before += packed.bytesBefore();
                after += packed.bytesAfter();
                out.println(file + ": " + sentence(packed));
            } catch (RecordingException e) {
                refused++;
                err.println(e.getMessage());
            }
            out.flush();
        }
        if (given.size() > 1) {
            out.println(Screen.counted(given.size() - refused, "recording") + ": " + kilobytes(before) + " before, "
                    + kilobytes(after) + " now");
        }
        return refused > 0 ? Exits.UNUSABLE : Exits.DONE;
    }

    private static String sentence(Packed packed) {
        if (!packed.isReplaced()) {
            return "nothing to pack, " + kilobytes(packed.bytesBefore());
        }
        String each = packed.samples() == 0
                ? ""
                : String.format(Locale.ROOT, ", %.3f bytes a sample", packed.bytesAfter() / (double) packed.samples());
        return kilobytes(packed.bytesBefore()) + " before, " + kilobytes(packed.bytesAfter()) + " now" + each
                + "; verified, every link as before";
    }

    private static String kilobytes(long bytes) {
        return String.format(Locale.ROOT, "%,d kB", (bytes + 999) / 1_000);
    }
}
