package tautlog.logger.control;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.sample.HookupSource;
import tautlog.sample.Tally;

/**
 * What a logger is doing, at one moment.
 *
 * @param program name and version
 * @param written the moment, by this computer's clock
 * @param started when the logger started
 * @param closed true when it stopped in order
 * @param hangUps how often the port vanished since the start
 * @param beacon word for what the beacon shows
 */
public record Status(
        String program,
        Instant written,
        Instant started,
        boolean closed,
        String winch,
        String port,
        boolean portOpen,
        long hangUps,
        String beacon,
        Optional<OutingStatus> outing,
        DiskStatus disk) {

    /**
     * The outing that is on, or was last.
     *
     * @param lastNumber of its last sample
     * @param lastSample when that was taken; empty while no clock is known
     * @param share tension / limit of the last sample
     * @param limitIsAtMost the true limit is lower: shares are "at least"
     * @param lostByInstrument samples that the instrument lost itself
     */
    public record OutingStatus(
            String instrument,
            long samples,
            Optional<Long> lastNumber,
            Optional<Instant> lastSample,
            OptionalDouble tensionNewtons,
            OptionalDouble share,
            OptionalDouble shaftRpm,
            String hookup,
            HookupSource hookupBy,
            double limitNewtons,
            boolean limitIsAtMost,
            Tally tally,
            long lostByInstrument) {}

    /**
     * The recording.
     *
     * @param file that is written now
     * @param lagSeconds age of the oldest sample that the disk has not
     * @param lostSamples for which no room was left while the disk stalled
     * @param lostEvents other things for which no room was left
     * @param trouble what the disk says when it refuses
     * @param freeBytes left for this user, empty when the system does not say
     * @param lastLink of the chain, as last committed; keep it elsewhere to prove that nothing was changed
     */
    public record DiskStatus(
            String folder,
            Optional<String> file,
            double lagSeconds,
            long lostSamples,
            long lostEvents,
            Optional<String> trouble,
            Optional<Long> freeBytes,
            Optional<String> lastLink) {}
}
