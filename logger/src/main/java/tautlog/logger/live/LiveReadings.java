package tautlog.logger.live;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tautlog.logger.live.HookupInForce.Choice;
import tautlog.rig.Hookup;
import tautlog.sample.HookupSource;
import tautlog.sample.Tally;

/**
 * How an outing stands, at most a second old.
 *
 * @param instrument id of the instrument
 * @param samples received
 * @param lastNumber of the last sample
 * @param lastSample when that was taken; empty while no clock is known
 * @param lastCounts of that sample, less what the zero moved
 * @param silentSeconds how long ago it came; empty when none did
 * @param tensionNewtons of that sample; empty when it is more than a second old: what was is not what is
 * @param greatestNewtons of the last second
 * @param shaftRpm latest reading; empty like the tension
 * @param hookup in force, with its limit
 * @param tally what the line lost
 * @param lostByInstrument samples that the instrument lost itself, since its boot
 * @param zero whether the tensions start from a zero that was seen
 */
public record LiveReadings(
        String instrument,
        long samples,
        Optional<Long> lastNumber,
        Optional<Instant> lastSample,
        OptionalInt lastCounts,
        OptionalDouble silentSeconds,
        OptionalDouble tensionNewtons,
        OptionalDouble greatestNewtons,
        OptionalDouble shaftRpm,
        Hookup hookup,
        HookupSource hookupBy,
        Tally tally,
        long lostByInstrument,
        Zero zero) {

    /**
     * The zero in force.
     *
     * @param proven slack was proven in this outing, or a person said so with the mark button
     * @param movedNewtons how far it lies from the calibration's own zero
     */
    public record Zero(boolean proven, double movedNewtons) {
        static final Zero UNPROVEN = new Zero(false, 0);
    }

    static LiveReadings none(String instrument, Choice hookup, Tally tally) {
        return new LiveReadings(
                instrument,
                0,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                hookup.hookup(),
                hookup.by(),
                tally,
                0,
                Zero.UNPROVEN);
    }

    /** Greatest tension of the last second / limit; empty when no sample came. At least this when the limit is "at most". */
    public OptionalDouble share() {
        return greatestNewtons.isPresent()
                ? OptionalDouble.of(
                        greatestNewtons.getAsDouble() / hookup.limit().newtons().doubleValue())
                : OptionalDouble.empty();
    }
}
