package tautlog.desk.planning;

import java.util.Optional;
import tautlog.fixtures.Rigs;
import tautlog.plan.HaulText;
import tautlog.plan.PlanException;
import tautlog.rig.Rig;

/** Plans for tests. A log of one tonne: 1000 kg/m3, 1.2732 m by 1 m in the middle is one cubic metre to 0.02 %. */
final class Plans {
    static final String TONNE = "1000 kg/m3, 1.2732 m, mid 100 cm";

    private Plans() {}

    static Rig rig(String gear, String items) {
        return Rigs.parsed("schema = 1\n[winch]\nname = \"w\"\nrated_pull = \"40 kN\"\n" + gear
                + "[[hookup]]\nid = \"h\"\nitems = [ " + items + " ]\n");
    }

    static PullPlan of(Rig rig, String log, String friction, String slope) {
        return of(rig, log, friction, slope, Optional.empty());
    }

    static PullPlan of(Rig rig, String log, String friction, String slope, Optional<String> blockAngle) {
        HaulText haul =
                new HaulText(log, Optional.empty(), Optional.of(friction), Optional.of(slope), Optional.empty());
        try {
            return PullPlan.of(rig, PlanRequest.read(new PlanText(haul, blockAngle, Optional.empty()), rig));
        } catch (PlanException wrong) {
            throw new AssertionError(wrong);
        }
    }
}
