package tautlog.logger.beacon;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.logger.wire.BeaconState;

@Timeout(20)
class BeaconSenderTest {
    private final BeaconLamp lamp = new BeaconLamp();
    private final AtomicReference<Double> lagSeconds = new AtomicReference<>(0.4);
    private final BeaconSender sender = new BeaconSender(lamp, lagSeconds::get);
    private final BlockingQueue<BeaconState> sent = new LinkedBlockingQueue<>();
    private final Thread thread = new Thread(sender);

    @AfterEach
    void stop() throws InterruptedException {
        thread.interrupt();
        thread.join();
    }

    @Test
    void saysFaultWhileTheDiskHangsAndClearsWhenItHasCaughtUp() throws InterruptedException {
        // given: a sensor that sees nothing wrong, a disk that keeps up
        sender.sendTo(sent::add);
        lamp.sensor(BeaconState.CLEAR, System.nanoTime());
        thread.start();
        awaitState(BeaconState.CLEAR);

        // when: no commit returns any more
        lagSeconds.set(6.0);

        // then
        awaitState(BeaconState.FAULT);
        lagSeconds.set(0.4);
        awaitState(BeaconState.CLEAR);
    }

    @Test
    void bearsASlowFlush() throws InterruptedException {
        sender.sendTo(sent::add);
        lamp.sensor(BeaconState.CLEAR, System.nanoTime());
        lagSeconds.set(4.0);
        thread.start();
        awaitState(BeaconState.CLEAR);

        assertEquals(BeaconState.CLEAR, sent.poll(5, TimeUnit.SECONDS));
    }

    private void awaitState(BeaconState wanted) throws InterruptedException {
        BeaconState last = sent.take();
        while (last != wanted) {
            last = sent.take();
        }
    }
}
