package tautlog.desk.cli;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.rig.Gear;
import tautlog.service.Act;
import tautlog.service.InspectionFigure;
import tautlog.service.Verdict;

/** Enters that a competent person inspected gear. */
@Command(
        name = "inspect",
        headerHeading = "Examples:%n"
                + "  tautlog service inspect rope --ledger ledger.jsonl --by Wren --result back-in-service%n"
                + "      --broken-wires-in-lay 2 --diameter-mm 10.8%n"
                + "  tautlog service inspect choker --piece red --ledger ledger.jsonl --by Wren --result scrap --damage stretched%n"
                + "%n",
        header = "Enters that a competent person inspected gear, what was found and decided.",
        description = {
            "",
            "The named person decides, by the gear's maker and the rules that apply there. Gear that",
            "an overload took out of service comes back only by such an entry.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceInspectCommand implements Callable<Integer> {
    @Mixin
    private GearOptions gear = new GearOptions();

    @Option(
            names = "--result",
            required = true,
            paramLabel = "RESULT",
            description = "back-in-service, stays-out or scrap.")
    private String result = "";

    @Option(names = "--broken-wires-in-lay", paramLabel = "N", description = "The most in one lay length.")
    private @Nullable Integer inLay;

    @Option(names = "--broken-wires-in-strand", paramLabel = "N", description = "The most of one strand in one lay.")
    private @Nullable Integer inStrand;

    @Option(names = "--broken-wires-in-6d", paramLabel = "N", description = "The most over 6 diameters.")
    private @Nullable Integer in6d;

    @Option(names = "--broken-wires-in-30d", paramLabel = "N", description = "The most over 30 diameters.")
    private @Nullable Integer in30d;

    @Option(names = "--broken-wires-at-end", paramLabel = "N", description = "At the termination.")
    private @Nullable Integer atEnd;

    @Option(names = "--diameter-mm", paramLabel = "D", description = "Where the rope is thinnest.")
    private @Nullable BigDecimal diameter;

    @Option(names = "--link-thickness-mm", paramLabel = "D", description = "Of the chain's thinnest link.")
    private @Nullable BigDecimal link;

    @Option(names = "--length-mm", paramLabel = "L", description = "Of chain or sling, under light tension.")
    private @Nullable BigDecimal length;

    @Option(
            names = "--damage",
            paramLabel = "WORD",
            description = "What was seen: kink, heat, crack …; may be repeated.")
    private List<String> damage = List.of();

    @Mixin
    private TimedEntry entry = new TimedEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        entry.requireName("An inspection");
        Act.Inspected inspected = new Act.Inspected(gear.piece(), verdict(), figures(), damage);
        refuseStrange(inspected, gear.inRig());
        return gear.enter(inspected, entry, spec);
    }

    /** @param inRig the gear first; empty when it is not known */
    private static void refuseStrange(Act.Inspected inspected, List<Gear> inRig) throws UsageException {
        for (String key :
                inRig.isEmpty() ? Set.<String>of() : inspected.figures().keySet()) {
            InspectionFigure figure = InspectionFigure.of(key).orElseThrow();
            Gear it = inRig.get(0);
            if (!figure.fits(it.kind())) {
                List<String> others = inRig.stream()
                        .filter(other -> figure.fits(other.kind()))
                        .map(Gear::id)
                        .toList();
                throw new UsageException(
                        option(figure) + ": \"" + it.id() + "\" is " + it.kind().word() + ", only "
                                + figure.kindWords() + " has " + figure.words() + ".\n  "
                                + (others.isEmpty() ? "" : "Was it " + String.join(" or ", others) + "? ")
                                + "What else was measured goes into --note.");
            }
        }
    }

    private static String option(InspectionFigure figure) {
        return "--" + figure.key().replace('_', '-');
    }

    private Verdict verdict() throws UsageException {
        try {
            return Reading.oneOf(Verdict.class).read(result);
        } catch (Refusal refusal) {
            throw new UsageException("--result: " + refusal.found() + ".\n  " + refusal.allowed());
        }
    }

    private Map<String, BigDecimal> figures() throws UsageException {
        Map<InspectionFigure, Optional<BigDecimal>> given = new EnumMap<>(InspectionFigure.class);
        given.put(InspectionFigure.BROKEN_WIRES_IN_LAY, count(inLay));
        given.put(InspectionFigure.BROKEN_WIRES_IN_STRAND, count(inStrand));
        given.put(InspectionFigure.BROKEN_WIRES_IN_6D, count(in6d));
        given.put(InspectionFigure.BROKEN_WIRES_IN_30D, count(in30d));
        given.put(InspectionFigure.BROKEN_WIRES_AT_END, count(atEnd));
        given.put(InspectionFigure.DIAMETER_MM, Optional.ofNullable(diameter));
        given.put(InspectionFigure.LINK_THICKNESS_MM, Optional.ofNullable(link));
        given.put(InspectionFigure.LENGTH_MM, Optional.ofNullable(length));
        Map<String, BigDecimal> figures = new TreeMap<>();
        for (var figure : given.entrySet()) {
            if (figure.getValue().filter(value -> value.signum() < 0).isPresent()) {
                throw new UsageException(
                        option(figure.getKey()) + ": " + figure.getValue().get() + " is below 0.\n  Allowed: from 0.");
            }
            figure.getValue().ifPresent(value -> figures.put(figure.getKey().key(), value));
        }
        return figures;
    }

    private static Optional<BigDecimal> count(@Nullable Integer given) {
        return Optional.ofNullable(given).map(BigDecimal::valueOf);
    }
}
