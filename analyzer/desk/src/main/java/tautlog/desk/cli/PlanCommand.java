package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.TextPage;
import tautlog.desk.planning.PlanRequest;
import tautlog.desk.planning.PlanText;
import tautlog.desk.planning.PullPlan;
import tautlog.plan.HaulText;
import tautlog.plan.PlanException;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

/** The pull that a log needs, before it is made. */
@Command(
        name = "plan",
        headerHeading = "Examples:%n"
                + "  tautlog plan --rig rig.toml --log \"Norway spruce, 12 m, 40/28 cm\"%n"
                + "  tautlog plan --rig rig.toml --log \"950 kg/m3, 6 m, mid 52 cm\" --slope \"15 deg\"%n"
                + "%n",
        header = "The pull it takes to skid a log, against each item's limit, before it is made.",
        description = {
            "",
            "The log's weight, the pull expected on this ground and slope as an interval, and",
            "beside it, always, the winch's full pull if the log hangs up: every item's share of",
            "its limit, what breaks first, and what changes as the angle at a block closes.",
            "A plan sets no limit and permits nothing.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class PlanCommand implements Callable<Integer>, Inked {
    @Option(names = "--rig", required = true, paramLabel = "FILE", description = "The winch and its gear.")
    private Path rig = Path.of("");

    @Option(
            names = "--log",
            required = true,
            paramLabel = "LOG",
            description =
                    "Species or density, length, diameters: \"40/28 cm\" at the ends, \"40/35/28 cm\" with the middle,"
                            + " or \"mid 34 cm\".")
    private String log = "";

    @Option(
            names = "--ground",
            paramLabel = "GROUND",
            description = "flat, front-raised, whole-tree or snow; without it the widest band.")
    private @Nullable String ground;

    @Option(names = "--friction", paramLabel = "0.4..0.7", description = "A band of friction instead of a ground.")
    private @Nullable String friction;

    @Option(
            names = "--slope",
            paramLabel = "SLOPE",
            description = "\"15 deg\" or \"25 %%\" in the direction of the pull, uphill above 0; without it level.")
    private @Nullable String slope;

    @Option(
            names = "--slope-plus-minus",
            paramLabel = "SLOPE",
            description = "How far the slope may be off, in the same unit.")
    private @Nullable String slopePlusMinus;

    @Option(
            names = "--block-angle",
            paramLabel = "ANGLE",
            description = "\"60 deg\" between the lines at every fixed block, instead of the rig's.")
    private @Nullable String blockAngle;

    @Option(names = "--hookup", paramLabel = "ID", description = "Only this hookup.")
    private @Nullable String hookup;

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(
            names = "--html",
            paramLabel = "F",
            description = "Write a page with drawings too; - for the standard output.")
    private @Nullable String html;

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
        boolean pageOnly = html != null && Output.isStandard(html);
        if (json && pageOnly) {
            throw new UsageException(
                    "--json and --html -: only one of them can go to the standard output.\n  Give the page a file.");
        }
        Rig read = RigSource.read(rig).rig();
        ForceUnit unit = units == null ? read.units() : ScreenUnit.of("--units", units);
        PullPlan plan = PullPlan.of(read, request(read));
        PrintWriter out = spec.commandLine().getOut();
        if (html != null) {
            try (Writer page = Output.open("--html", html, out)) {
                page.write(HtmlPage.render(plan.document(unit)));
            }
        }
        if (json) {
            out.print(plan.json());
        } else if (!pageOnly) {
            out.print(TextPage.render(plan.document(unit), ink));
        }
        return Exits.DONE;
    }

    private PlanRequest request(Rig read) throws UsageException {
        HaulText haul = new HaulText(
                log,
                Optional.ofNullable(ground),
                Optional.ofNullable(friction),
                Optional.ofNullable(slope),
                Optional.ofNullable(slopePlusMinus));
        try {
            return PlanRequest.read(
                    new PlanText(haul, Optional.ofNullable(blockAngle), Optional.ofNullable(hookup)), read);
        } catch (PlanException wrong) {
            throw new UsageException(
                    wrong.flaws().stream().map(flaw -> "--" + flaw).collect(Collectors.joining("\n")));
        }
    }
}
