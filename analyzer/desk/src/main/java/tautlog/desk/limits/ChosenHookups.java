package tautlog.desk.limits;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/** The hookups that somebody asked for. */
public final class ChosenHookups {
    private ChosenHookups() {}

    /** @throws IllegalArgumentException if the rig has no hookup {@code id} */
    public static List<Hookup> of(Rig rig, Optional<String> id) {
        if (id.isEmpty()) {
            return rig.hookups();
        }
        return List.of(rig.hookup(id.get())
                .orElseThrow(
                        () -> new IllegalArgumentException("\"" + id.get() + "\" is no hookup of this rig. It has: "
                                + rig.hookups().stream().map(Hookup::id).collect(Collectors.joining(", ")) + ".")));
    }
}
