package tautlog.logger.simulate.physics;

/**
 * A part of the hookup that can let go.
 *
 * @param gear its id in the rig
 * @param multiple load on the part / tension in the line
 * @param strengthNewtons load at which it parts; infinite when it never does
 * @param freesMetres 0 when the line parts with it; else it held a block, and the line only loses its way round
 *     and hangs slack by this much
 */
public record Part(String gear, double multiple, double strengthNewtons, double freesMetres) {
    public static Part of(String gear, double multiple, double strengthNewtons) {
        return new Part(gear, multiple, strengthNewtons, 0);
    }
}
