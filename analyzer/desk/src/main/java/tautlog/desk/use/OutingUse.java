package tautlog.desk.use;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tautlog.rig.Opening;
import tautlog.usage.Coverage;
import tautlog.usage.MachineUse;
import tautlog.usage.MeterReading;

/**
 * What the machine did in one outing: all that meters, gear and service ask of it, without the readings.
 *
 * @param at which outing of which recording
 * @param start when its first sample that counts was taken; empty while it has no clock
 * @param end when its last sample was taken; empty as {@code start}
 * @param samples how many were stored
 * @param nature what a reader must know of how it was recorded
 * @param opening what its rig says the winch had done before the first recording
 * @param meters of this outing alone
 * @param coverage how much of its time is known
 * @param machine what gear, rope and driveline bore
 * @param events what may call for service, in the order of their starts, of the same start by kind
 * @param damages blocks that could not be read, a sentence each; what they held is a gap
 */
public record OutingUse(
        OutingPlace at,
        Optional<Instant> start,
        Optional<Instant> end,
        long samples,
        Nature nature,
        Opening opening,
        MeterReading meters,
        Coverage coverage,
        MachineUse machine,
        List<UseEvent> events,
        List<String> damages) {
    public OutingUse {
        events = List.copyOf(events);
        damages = List.copyOf(damages);
    }

    /** The same, with all overloads and other findings of {@code whole}, of which this is a part: what warns is not left out. */
    OutingUse withFindingsOf(OutingUse whole) {
        return new OutingUse(
                at,
                start,
                end,
                samples,
                nature,
                opening,
                meters,
                coverage,
                machine.withLoadsOf(whole.machine),
                whole.events,
                damages);
    }

    /** The same, found in this file. */
    OutingUse in(String file) {
        return new OutingUse(
                new OutingPlace(at.winch(), at.recordingId(), file, at.outing()),
                start,
                end,
                samples,
                nature,
                opening,
                meters,
                coverage,
                machine,
                events,
                damages);
    }

    /**
     * How it was recorded.
     *
     * @param imported its readings were logged elsewhere
     * @param thinned its readings were taken out: pulls are those said on the day
     * @param ended it was closed in order, not by the power, and does not go on
     */
    public record Nature(boolean imported, boolean thinned, boolean ended) {}
}
