package tautlog.desk.cli;

import java.io.PrintWriter;
import java.util.function.LongSupplier;
import tautlog.desk.page.Ink;
import tautlog.desk.progress.Kept;
import tautlog.desk.progress.Progress;
import tautlog.desk.progress.Sofar;
import tautlog.desk.progress.TimeLeft;

/** One line on a terminal that is drawn over and over, and taken away when the work is over or stopped. Safe for threads. */
final class ProgressLine implements Progress {
    /** Chosen: slow enough to be read, and work that is over before shows nothing. */
    private static final long REDRAW_NANOS = 250_000_000L;

    private static final String CLEAR = "\r\u001B[K";

    private final PrintWriter err;
    private final LongSupplier nanoTime;
    private String what = "";
    private TimeLeft left = new TimeLeft(0);
    private long latestNanos;
    private long drawnNanos;
    private boolean drawn;
    private boolean stopped;

    /** @param nanoTime a clock that never goes back */
    ProgressLine(PrintWriter err, LongSupplier nanoTime) {
        this.err = err;
        this.nanoTime = nanoTime;
        latestNanos = nanoTime.getAsLong();
        drawnNanos = latestNanos;
    }

    /** A line where somebody looks on; else only what is said when the program is stopped. */
    static Progress of(Ink ink, PrintWriter err) {
        return ink == Ink.TERMINAL ? new ProgressLine(err, System::nanoTime) : new StoppedOnly(err);
    }

    @Override
    public synchronized void done(Sofar sofar) {
        long now = nanoTime.getAsLong();
        if (!sofar.what().equals(what)) {
            what = sofar.what();
            left = new TimeLeft(latestNanos); // the work before it was over then
        }
        latestNanos = now;
        String estimate = left.at(now, sofar.size(), sofar.ofSize())
                .map(duration -> ", " + TimeLeft.words(duration))
                .orElse("");
        if (sofar.isLast()) {
            clear();
        } else if (!stopped && now - drawnNanos >= REDRAW_NANOS) {
            err.print(CLEAR + sofar.done() + " of " + sofar.of() + " " + sofar.what() + estimate);
            err.flush();
            drawn = true;
            drawnNanos = now;
        }
    }

    @Override
    public synchronized void stopped(Kept kept) {
        stopped = true;
        clear();
        err.println(kept.sentence());
        err.flush();
    }

    private void clear() {
        if (drawn) {
            err.print(CLEAR);
            err.flush();
            drawn = false;
        }
    }

    /** Nobody looks on. */
    private static final class StoppedOnly implements Progress {
        private final PrintWriter err;

        private StoppedOnly(PrintWriter err) {
            this.err = err;
        }

        @Override
        public void done(Sofar sofar) {}

        @Override
        public boolean isWatched() {
            return false;
        }

        @Override
        public void stopped(Kept kept) {
            err.println(kept.sentence());
            err.flush();
        }
    }
}
