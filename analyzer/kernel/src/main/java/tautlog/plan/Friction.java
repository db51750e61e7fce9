package tautlog.plan;

import java.util.Optional;

/**
 * Pull on level ground / weight of the log, as an interval.
 *
 * @param ground the class whose band it is; empty when it was written as numbers, or nobody said
 * @param isAssumed nobody said anything: the widest band there is
 */
public record Friction(Interval coefficient, Optional<GroundClass> ground, boolean isAssumed) {
    static final Friction ASSUMED = new Friction(GroundClass.widest(), Optional.empty(), true);

    static Friction of(GroundClass ground) {
        return new Friction(ground.friction(), Optional.of(ground), false);
    }

    static Friction written(Interval coefficient) {
        return new Friction(coefficient, Optional.empty(), false);
    }
}
