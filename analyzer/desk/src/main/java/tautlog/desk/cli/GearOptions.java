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

    @Option(names = "--rig", paramLabel = "F", description = "rig.toml, to tell gear that is not in it.")
    private @Nullable Path rig;

    GearPiece piece() {
        return new GearPiece(gear, Optional.ofNullable(piece).map(String::strip).filter(name -> !name.isEmpty()));
    }

    /** Enters {@code act}; says so when nobody could tell whether there is such gear. */
    int enter(Act act, TimedEntry entry, CommandSpec spec) throws IOException, UsageException, ConfigException {
        inRig();
        return enterUnchecked(act, entry, spec);
    }

    /** The same of gear that is gone: of that the rig may know no more, which is told. */
    int enterGone(Act act, TimedEntry entry, CommandSpec spec) throws IOException, UsageException, ConfigException {
        Optional<String> stranger = stranger(rigsGear());
        int code = enterUnchecked(act, entry, spec);
        if (stranger.isPresent()) {
            spec.commandLine()
                    .getErr()
                    .println(stranger.get() + "\n  That is right of gear that is gone. If other gear was"
                            + " meant, enter it again with --replaces.");
        }
        return code;
    }

    private int enterUnchecked(Act act, TimedEntry entry, CommandSpec spec) throws IOException, UsageException {
        int code = entry.enter(act, spec.commandLine().getOut());
        if (rig == null) {
            spec.commandLine().getErr().println("Not checked whether there is such gear: give --rig rig.toml.");
        }
        return code;
    }

    /** The rig's gear, this first; empty without a rig, and for the load cell, which is none of its gear. */
    List<Gear> inRig() throws IOException, UsageException, ConfigException {
        if (isUnchecked()) {
            return List.of();
        }
        List<Gear> all = rigsGear();
        Optional<String> stranger = stranger(all);
        if (stranger.isPresent()) {
            throw new UsageException(stranger.get());
        }
        return all.stream()
                .sorted(Comparator.comparing(one -> !one.id().equals(gear)))
                .toList();
    }

    private boolean isUnchecked() {
        return rig == null || gear.equals(LoadedItem.CELL);
    }

    private List<Gear> rigsGear() throws IOException, UsageException, ConfigException {
        return rig == null ? List.of() : RigSource.read(rig).rig().gear();
    }

    /** That the rig has no such gear; empty when it has, or was not asked. */
    private Optional<String> stranger(List<Gear> all) {
        List<String> ids = all.stream().map(Gear::id).toList();
        if (isUnchecked() || ids.contains(gear)) {
            return Optional.empty();
        }
        return Optional.of("There is no gear \"" + gear + "\" in " + rig + ".\n  "
                + NearestKey.to(gear, ids)
                        .map(id -> "Did you mean " + id + "? ")
                        .orElse("")
                + "It has: " + String.join(", ", ids) + ".");
    }
}
