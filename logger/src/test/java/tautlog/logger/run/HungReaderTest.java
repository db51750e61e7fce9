package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.logger.ScriptedPort;
import tautlog.logger.port.InstrumentLine;

@Timeout(20)
class HungReaderTest {
    private static long in(long seconds) {
        return System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    }

    @Test
    void thatHangsInOneReadIsHungAfterFifteenSeconds() throws Exception {
        Silence listener = new Silence(true);
        Thread thread = start(listener, new ScriptedPort().bring(new byte[1]));
        listener.called.await();

        assertFalse(listener.reader.isHung(in(10)));
        assertTrue(listener.reader.isHung(in(16)));

        listener.release.countDown();
        listener.reader.stop();
        thread.join();
    }

    @Test
    void goesOnLookingForAPortThatIsGone() throws Exception {
        ScriptedPort port = new ScriptedPort().hangUp();
        Silence listener = new Silence(false);
        Thread thread = start(listener, port);
        port.missing(true);
        listener.called.await(); // there is no line
        long before = System.nanoTime();
        while (listener.waits < 3) {
            Thread.onSpinWait();
        }

        assertFalse(listener.reader.isHung(before + TimeUnit.SECONDS.toNanos(15)));

        listener.reader.stop();
        thread.join();
    }

    private static Thread start(Silence listener, ScriptedPort port) throws Exception {
        listener.reader = new LineReader(port, LineReader.AtHangUp.REOPEN, listener);
        InstrumentLine line = port.open();
        Thread thread = new Thread(() -> {
            try {
                listener.reader.run(line);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
        });
        thread.start();
        return thread;
    }

    /** Hears nothing; hangs at the first bytes if so told. */
    private static final class Silence implements LineReader.Listener {
        final CountDownLatch called = new CountDownLatch(1);
        final CountDownLatch release = new CountDownLatch(1);
        final boolean hangs;
        volatile int waits;
        LineReader reader = new LineReader(new ScriptedPort(), LineReader.AtHangUp.END, this);

        Silence(boolean hangs) {
            this.hangs = hangs;
        }

        @Override
        public void opened(InstrumentLine line) {}

        @Override
        public void bytes(byte[] bytes, int n) {
            if (hangs && n > 0) {
                called.countDown();
                try {
                    release.await();
                } catch (InterruptedException stopped) {
                    Thread.currentThread().interrupt();
                }
            }
        }

        @Override
        public void gone() {}

        @Override
        public void waiting() {
            if (!hangs) {
                waits = waits + 1;
                called.countDown();
            }
        }
    }
}
