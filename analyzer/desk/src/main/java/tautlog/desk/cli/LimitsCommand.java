package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.desk.limits.LimitsJson;
import tautlog.desk.limits.LimitsText;
import tautlog.desk.page.Ink;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/** What each hookup may carry. */
@Command(
        name = "limits",
        headerHeading = "Examples:%n"
                + "  tautlog limits --rig rig.toml%n"
                + "  tautlog limits --rig rig.toml --hookup round-the-corner --units lbf%n"
                + "%n",
        header = "Each hookup's limit, what sets it, what each item may carry.",
        description = {
            "",
            "Each hookup's limit, the item that sets it, every item's allowed load, what breaks",
            "first at the winch's full pull.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class LimitsCommand implements Callable<Integer>, Inked {
    @Option(names = "--rig", required = true, paramLabel = "FILE", description = "The winch and its gear.")
    private Path rig = Path.of("");

    @Option(names = "--hookup", paramLabel = "ID", description = "Only this hookup.")
    private @Nullable String hookup;

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(names = "--units", paramLabel = "UNIT", description = "kN, daN, kgf, t or lbf instead of the rig's.")
    private @Nullable String units;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        Optional<String> asked = Optional.ofNullable(hookup);
        Rig read = RigSource.read(rig).rig();
        ForceUnit unit = units == null ? read.units() : ScreenUnit.of("--units", units);
        if (asked.isPresent() && read.hookup(asked.get()).isEmpty()) {
            throw new UsageException("--hookup: the rig has no hookup \"" + asked.get() + "\".\n  It has: "
                    + String.join(", ", read.hookups().stream().map(Hookup::id).toList()) + ".");
        }
        spec.commandLine()
                .getOut()
                .print(json ? LimitsJson.render(read, asked) : new LimitsText(unit, ink).show(read, asked));
        return Exits.DONE;
    }
}
