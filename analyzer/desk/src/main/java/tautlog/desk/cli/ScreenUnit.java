package tautlog.desk.cli;

import java.util.stream.Collectors;
import tautlog.quantity.ForceUnit;

/** The unit that {@code --units} names. */
final class ScreenUnit {
    private ScreenUnit() {}

    static ForceUnit of(String option, String symbol) throws UsageException {
        return ForceUnit.ON_SCREEN.stream()
                .filter(unit -> unit.symbol().equals(symbol))
                .findFirst()
                .orElseThrow(() -> new UsageException(option + ": \"" + symbol
                        + "\" is not a unit for screens.\n  Allowed: "
                        + ForceUnit.ON_SCREEN.stream().map(ForceUnit::symbol).collect(Collectors.joining(", ")) + "."));
    }
}
