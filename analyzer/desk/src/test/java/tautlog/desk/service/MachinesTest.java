package tautlog.desk.service;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.config.ConfigException;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.progress.Progress;
import tautlog.desk.use.OutingUse;
import tautlog.desk.use.UseHistory;
import tautlog.desk.use.UseSettings;
import tautlog.rig.Rig;
import tautlog.service.Amount;
import tautlog.service.Meter;
import tautlog.service.Stint;
import tautlog.usage.Coverage;
import tautlog.usage.GearUse;
import tautlog.usage.Greatest;
import tautlog.usage.MachineUse;
import tautlog.usage.TimeSum;

/** What an outing tells of the machine's work, and what it leaves open. */
class MachinesTest {
    private static final TimeSum HOUR = TimeSum.of(3_600, 1_000);

    @TempDir
    Path folder;

    private Rig rig;
    private OutingUse sample;

    @BeforeEach
    void theSampleDay() throws IOException, ConfigException {
        SampleDay.write(folder);
        rig = Rig.parse("rig.toml", SampleDay.rigToml());
        sample = UseHistory.of(List.of(folder), UseSettings.of(Optional.empty(), "test", Progress.SILENT))
                .outings()
                .get(0);
    }

    private OutingUse with(Coverage coverage, MachineUse machine) {
        return new OutingUse(
                sample.at(),
                sample.start(),
                sample.end(),
                sample.samples(),
                sample.nature(),
                sample.opening(),
                sample.meters(),
                coverage,
                machine,
                sample.events(),
                sample.damages());
    }

    private Stint stint(TimeSum withoutShaft, Optional<Rig> by) {
        return Machines.stint(with(new Coverage(HOUR, TimeSum.ZERO, withoutShaft), sample.machine()), by);
    }

    private static Amount joint(Stint stint) {
        return stint.amount(Meter.JOINT_H, Optional.empty());
    }

    @Test
    void anHourWithoutShaftReadingsMayHaveWornTheJointAsTheRatedPullAtTheRatedSpeedWould() {
        double metered = joint(stint(TimeSum.ZERO, Optional.of(rig))).greatest().orElseThrow();
        double seen = joint(stint(HOUR, Optional.of(rig))).greatest().orElseThrow();

        // rigging.md by hand: 40 kN on layer 4 of 180 mm and 11 mm, 14.0 · 0.75, of 1120 N m: 0.43708 to 10/3, times
        // 8/5
        assertEquals(Math.pow(40_000 * 0.1285 / 10.5 / 1_120, 10.0 / 3) * 8 / 5, seen - metered, 1e-9);
    }

    @Test
    void withoutARigNobodyCanBoundWhatTheJointBoreUnseen() {
        assertEquals(
                Optional.empty(),
                joint(stint(HOUR, Optional.empty())).greatest().stream().boxed().findFirst());
    }

    @Test
    void pullsUnderAnAssumedHookupMayHaveBeenPullsOfGearOfAnother() {
        MachineUse assumed = new MachineUse(
                List.of(used("choker", 5, 3), used("rope", 5, 3)),
                List.of(),
                sample.machine().driveline());
        Stint stint = Machines.stint(with(new Coverage(HOUR, TimeSum.ZERO, TimeSum.ZERO), assumed), Optional.of(rig));

        assertEquals(Amount.between(0, 3), stint.amount(Meter.PULLS, Optional.of("block-1")));
        assertEquals(Amount.known(5), stint.amount(Meter.PULLS, Optional.of("choker")));
        assertEquals(Amount.NONE, stint.amount(Meter.PULLS, Optional.of("in no hookup")));
    }

    private static GearUse used(String gear, long pulls, long assumed) {
        GearUse none = GearUse.none(gear);
        return new GearUse(
                gear,
                pulls,
                assumed,
                0,
                Map.of(),
                Greatest.NONE,
                Greatest.NONE,
                false,
                TimeSum.ZERO,
                none.above(),
                false,
                List.of());
    }
}
