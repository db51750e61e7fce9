package tautlog.logger.run;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.beacon.BeaconLamp.Trouble;
import tautlog.logger.instrument.Hearing;
import tautlog.logger.instrument.Hearing.State;
import tautlog.logger.wire.LineCounts;

/** Tells log and beacon what the line brings. A line that is no good is said once in ten minutes at most; reader thread. */
final class HearingWatch {
    private static final Logger LOG = LoggerFactory.getLogger(HearingWatch.class);
    private static final long SAID_AGAIN_NANOS = 600_000_000_000L;

    private final String port;
    private final BeaconLamp lamp;
    private final Hearing hearing = new Hearing();
    private boolean wasSaid;
    private long saidNanos;

    /** @param port for messages */
    HearingWatch(String port, BeaconLamp lamp) {
        this.port = port;
        this.lamp = lamp;
    }

    /** See {@link Hearing#look}. */
    void look(long bytes, LineCounts counts, boolean hearsSamples, long nowNanos) {
        State before = hearing.state();
        State now = hearing.look(bytes, counts, hearsSamples);
        if (now == before) {
            return;
        }
        if (now == State.SAME_ID) {
            lamp.fault(Trouble.SAME_ID, nowNanos);
        } else if (before == State.SAME_ID) {
            lamp.mended(Trouble.SAME_ID, nowNanos);
        }
        boolean isGood = now == State.UNDERSTOOD || now == State.NOTHING;
        if (!isGood && (!wasSaid || nowNanos - saidNanos > SAID_AGAIN_NANOS)) {
            wasSaid = true;
            saidNanos = nowNanos;
            LOG.warn(
                    "port {}: {}. Rejected so far: {}",
                    port,
                    now.words(),
                    counts.tally().rejected());
        } else {
            LOG.debug("port {}: {}", port, now.words());
        }
    }

    /** What was told last; any thread. */
    State state() {
        return hearing.state();
    }
}
