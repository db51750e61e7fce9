package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tautlog.config.ConfigException;
import tautlog.config.NearestKey;
import tautlog.rig.Gear;
import tautlog.rig.LoadedItem;
import tautlog.service.Act;
import tautlog.service.GearPiece;

/** Which gear an entry is about. */
final class GearOptions {
    @Parameters(paramLabel = "GEAR", description = "Its id in rig.toml.")
    private String gear = "";

    @Option(
            names = "--piece",
            paramLabel = "NAME",
            description = "Which of several identical pieces; without it all of them.")
    private @Nullable String piece;

    @Option(names = "--rig", paramLabel = "F", description = "rig.toml, to refuse gear that is not in it.")
    private @Nullable Path rig;

    GearPiece piece() {
        return new GearPiece(gear, Optional.ofNullable(piece).map(String::strip).filter(name -> !name.isEmpty()));
    }

    /** Enters {@code act}; says so when nobody could tell whether there is such gear. */
    int enter(Act act, LedgerEntry entry, CommandSpec spec) throws IOException, UsageException, ConfigException {
        inRig();
        int code = entry.enter(act, spec.commandLine().getOut());
        if (rig == null) {
            spec.commandLine().getErr().println("Not checked whether there is such gear: give --rig rig.toml.");
        }
        return code;
    }

    /** The rig's gear, this first; empty without a rig, and for the load cell, which is none of its gear. */
    List<Gear> inRig() throws IOException, UsageException, ConfigException {
        if (rig == null || gear.equals(LoadedItem.CELL)) {
            return List.of();
        }
        List<Gear> all = RigSource.read(rig).rig().gear();
        List<String> ids = all.stream().map(Gear::id).toList();
        if (!ids.contains(gear)) {
            throw new UsageException("There is no gear \"" + gear + "\" in " + rig + ".\n  "
                    + NearestKey.to(gear, ids)
                            .map(id -> "Did you mean " + id + "? ")
                            .orElse("")
                    + "It has: " + String.join(", ", ids) + ".");
        }
        return all.stream()
                .sorted(Comparator.comparing(one -> !one.id().equals(gear)))
                .toList();
    }
}
