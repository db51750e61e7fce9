package tautlog.logger.run;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Threads whose end, whatever it is by, ends no recording: that of the drive, that of thinning. */
final class BesideRecording {
    private static final Logger LOG = LoggerFactory.getLogger(BesideRecording.class);

    private BesideRecording() {}

    /** A daemon thread that is not started. */
    static Thread thread(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.setUncaughtExceptionHandler((where, thrown) ->
                LOG.error("bug in thread {}: it ended; the recording goes on", where.getName(), thrown));
        return thread;
    }
}
