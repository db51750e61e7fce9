package tautlog.logger.instrument.modbus;

import java.util.concurrent.TimeUnit;
import tautlog.logger.instrument.ReadingFault;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.instrument.modbus.Exchange.Outcome;
import tautlog.logger.port.InstrumentLine;

/**
 * The poller thread's work on one open line: ask, wait for the answer, wait until the next question is due. Sleeps between;
 * a device that is slower than the poll rate is asked as fast as it answers.
 *
 * <p>After a time-out or a spoilt answer the line must be silent for as long as an answer may take before the next
 * question. Ends when {@link #stop} is called; a write that hangs is freed when the line is closed.
 */
final class Poller implements Runnable {
    private final InstrumentLine line;
    private final byte[] request;
    private final Exchange exchange;
    private final ReadingOuting outing;
    private final Pace pace;
    private final Thread thread;
    private volatile boolean stopping;

    /**
     * When to ask.
     *
     * @param periodNanos between two questions
     * @param gapNanos of silence on the line before a question, at least
     * @param timeoutNanos how long an answer is waited for
     */
    record Pace(long periodNanos, long gapNanos, long timeoutNanos) {}

    Poller(InstrumentLine line, byte[] request, Exchange exchange, ReadingOuting outing, Pace pace) {
        this.line = line;
        this.request = request;
        this.exchange = exchange;
        this.outing = outing;
        this.pace = pace;
        thread = new Thread(this, "poller");
        thread.setDaemon(true); // it may wait for a device that takes nothing
    }

    void start() {
        thread.start();
    }

    void stop() {
        stopping = true;
        thread.interrupt();
    }

    @Override
    public void run() {
        try {
            awaitSilence(); // the answer to a question that another program asked may be under way
            long due = System.nanoTime();
            while (!stopping) {
                askOnce();
                long now = System.nanoTime();
                due = Math.max(due + pace.periodNanos, now + pace.gapNanos);
                TimeUnit.NANOSECONDS.sleep(due - now);
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private void askOnce() throws InterruptedException {
        exchange.ask();
        line.write(request, request.length);
        Outcome outcome = exchange.await(pace.timeoutNanos);
        if (outcome == Outcome.TIME_UP && !stopping) {
            outing.rejected(ReadingFault.TIMEOUT);
        }
        if (outcome != Outcome.ANSWERED) {
            awaitSilence();
        }
    }

    private void awaitSilence() throws InterruptedException {
        do {
            TimeUnit.NANOSECONDS.sleep(pace.timeoutNanos);
        } while (!stopping && exchange.takeHeard());
    }
}
