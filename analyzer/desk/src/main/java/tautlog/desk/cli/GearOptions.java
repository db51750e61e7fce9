package tautlog.desk.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
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

    GearPiece piece() {
        return new GearPiece(gear, Optional.ofNullable(piece).map(String::strip).filter(name -> !name.isEmpty()));
    }
}
