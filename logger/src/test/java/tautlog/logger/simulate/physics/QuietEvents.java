package tautlog.logger.simulate.physics;

import java.util.ArrayList;
import java.util.List;

/** Writes down what happens, as text. */
final class QuietEvents implements WorldEvents {
    final List<String> seen = new ArrayList<>();

    @Override
    public void parted(Part part, double loadNewtons, double tensionNewtons) {
        seen.add("parted " + part.gear());
    }

    @Override
    public void slipped(double tensionNewtons) {
        seen.add("slipped");
    }

    @Override
    public void stumpMet(Stump stump, double speed) {
        seen.add("met");
    }

    @Override
    public void stumpHopped(Stump stump, double pushNewtons) {
        seen.add("hopped");
    }
}
