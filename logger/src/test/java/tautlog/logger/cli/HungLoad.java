package tautlog.logger.cli;

import tautlog.logger.SmallInstrument;

/** An instrument whose cell carries what a test hangs on it, ten times faster than in life. */
final class HungLoad implements AutoCloseable {
    /** Takes the instrument's bytes. */
    interface Line {
        void send(byte[] bytes) throws Exception;
    }

    private static final int FRAME = 25;
    private static final int FRAME_MILLIS = 5;

    private final SmallInstrument instrument = new SmallInstrument(7);
    private final Thread thread;
    private volatile int counts;
    private volatile boolean swings;
    private volatile boolean stopping;

    HungLoad(Line line) {
        thread = new Thread(() -> {
            try {
                for (int k = 0; !stopping; k++) {
                    int sway = swings ? (int) Math.round(3_000 * Math.sin(k / 5.0)) : 0;
                    line.send(instrument.hold(counts + sway, FRAME).take());
                    Thread.sleep(FRAME_MILLIS);
                }
            } catch (Exception closed) {
                stopping = true;
            }
        });
        thread.start();
    }

    void hang(int newCounts) {
        counts = newCounts;
    }

    void swing(boolean isSwinging) {
        swings = isSwinging;
    }

    @Override
    public void close() {
        stopping = true;
        try {
            thread.join();
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }
}
