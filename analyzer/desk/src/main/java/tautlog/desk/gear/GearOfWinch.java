package tautlog.desk.gear;

import java.util.List;
import java.util.Optional;
import tautlog.rig.Driveline;
import tautlog.rig.Gear;
import tautlog.rig.Rig;

/** The gear of a winch as its latest rig describes it. */
public record GearOfWinch(String winch, List<Gear> gear, Optional<Driveline> driveline) {
    public GearOfWinch {
        gear = List.copyOf(gear);
    }

    public static GearOfWinch of(Rig rig) {
        return new GearOfWinch(rig.winch(), rig.gear(), rig.driveline());
    }
}
