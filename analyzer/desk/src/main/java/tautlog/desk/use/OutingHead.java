package tautlog.desk.use;

import java.time.Instant;
import java.util.Optional;
import tautlog.desk.analysis.Copies;
import tautlog.recording.Outing;
import tautlog.sample.OutingClock;

/**
 * What a file tells of one of its outings without its readings being read.
 *
 * @param fingerprint see {@link tautlog.recording.Recording#fingerprint}
 * @param rigKey stands for the text of the rig stored with it
 * @param start of its first sample; empty while it has no clock
 * @param end of its last sample
 */
record OutingHead(
        Copies.Identity identity,
        String fingerprint,
        String rigKey,
        long samples,
        boolean thinned,
        Optional<Instant> start,
        Optional<Instant> end) {
    static OutingHead of(Copies.Identity identity, String fingerprint, Outing outing) {
        OutingClock clock =
                OutingClock.of(outing.clockFixes(), outing.start().instrument().tickHz());
        return new OutingHead(
                identity,
                fingerprint,
                UseCache.rigKey(outing.start().rigToml()),
                outing.samples(),
                outing.thinned(),
                clock.instant(outing.firstTick()),
                clock.instant(outing.lastTick()));
    }
}
