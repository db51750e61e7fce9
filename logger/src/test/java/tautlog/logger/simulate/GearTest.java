package tautlog.logger.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import tautlog.logger.simulate.physics.Part;
import tautlog.logger.simulate.physics.Rigging;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;

/** The physical gear is that of {@code samples/rig.toml}. */
final class GearTest {
    private static Rig sampleRig() throws Exception {
        Path root = Path.of(Objects.requireNonNull(System.getProperty("tautlog.root")));
        return Rig.parse("rig.toml", Files.readString(root.resolve("samples/rig.toml")));
    }

    @Test
    void everyHookupHasTheSampleRigsItemsMultiplesAndBreakingLoads() throws Exception {
        Rig rig = sampleRig();
        for (Rigging rigging : new Rigging[] {Gear.straight(), Gear.roundTheCorner(), Gear.thinChoker()}) {
            Hookup hookup = rig.hookup(rigging.hookup()).orElseThrow();
            assertEquals(rigging.selector(), hookup.selector().orElseThrow());
            for (Part part : rigging.parts()) {
                LoadedItem item = hookup.items().stream()
                        .filter(i -> i.gear().equals(part.gear()))
                        .findFirst()
                        .orElseThrow();
                assertEquals(item.multiple().doubleValue(), part.multiple(), 1e-9, part.gear());
                double breaking =
                        item.breakingNewtons().map(b -> b.doubleValue()).orElse(Double.POSITIVE_INFINITY);
                assertEquals(breaking, part.strengthNewtons(), 0.01 * part.strengthNewtons(), part.gear());
            }
        }
    }

    @Test
    void theDrumIsTheSampleRigs() throws Exception {
        Rig rig = sampleRig();
        assertEquals(Gear.RATED_PULL_NEWTONS, rig.ratedPullNewtons().doubleValue(), 0.0);
        var driveline = rig.driveline().orElseThrow();
        double torque = driveline.shaftTorque(10_000, 4);
        assertEquals(10_000, Gear.drum().pullFrom(torque), 1); // the whole rope on the drum: its last layer
    }
}
