package tautlog.logger.simulate.physics;

/** What happens at an instant; everything else is seen by looking at the {@link World} after a step. */
public interface WorldEvents {
    /** A piece of gear let go under {@code loadNewtons}. */
    void parted(Part part, double loadNewtons, double tensionNewtons);

    /** The choker slid off the log. */
    void slipped(double tensionNewtons);

    /** The butt meets a stump, closing at {@code speed} m/s. */
    void stumpMet(Stump stump, double speed);

    /** The butt hops over the stump. */
    void stumpHopped(Stump stump, double pushNewtons);
}
