package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class BesideRecordingTest {
    @Test
    void endsWithoutAWordToAnybodyButTheLog() throws InterruptedException {
        Thread thread = BesideRecording.thread("beside", () -> {
            throw new OutOfMemoryError("in a test");
        });
        assertTrue(thread.isDaemon());
        assertNotSame(thread.getThreadGroup(), thread.getUncaughtExceptionHandler(), "its own handler logs it");

        thread.start();
        thread.join();

        assertFalse(thread.isAlive());
    }
}
