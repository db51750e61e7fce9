package tautlog.desk.progress;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** In a program of its own, as it ends. */
@Timeout(value = 2, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class WhenStoppedTest {
    /** Is told to stop while it works; its work is over before what is done last is. */
    static final class StoppedInTheLastMoment {
        private static volatile boolean workIsNearlyOver;

        private StoppedInTheLastMoment() {}

        public static void main(String[] args) throws InterruptedException {
            Thread worker = Thread.currentThread();
            CountDownLatch begun = new CountDownLatch(1);
            WhenStopped stopped = WhenStopped.does(() -> {
                begun.countDown();
                awaitEndOf(worker);
                System.out.println("kept");
            });
            new Thread(() -> System.exit(130)).start();
            begun.await();
            workIsNearlyOver = true;
            stopped.workIsOver();
            System.out.println("went on");
        }

        /** Until it waits or is at its end. */
        private static void awaitEndOf(Thread worker) {
            while (!workIsNearlyOver
                    || (worker.getState() != Thread.State.WAITING && worker.getState() != Thread.State.TERMINATED)) {
                Thread.onSpinWait();
            }
        }
    }

    /** Begins further work when it is told to stop already. */
    static final class StoppedBefore {
        private StoppedBefore() {}

        public static void main(String[] args) throws InterruptedException {
            Thread worker = Thread.currentThread();
            CountDownLatch ending = new CountDownLatch(1);
            Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                ending.countDown();
                StoppedInTheLastMoment.awaitEndOf(worker);
            }));
            new Thread(() -> System.exit(130)).start();
            ending.await();
            StoppedInTheLastMoment.workIsNearlyOver = true;
            WhenStopped.does(() -> System.out.println("kept"));
            System.out.println("went on");
        }
    }

    /** What a program says until it ends with 130. */
    private static String said(Class<?> program) throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        program.getName())
                .redirectErrorStream(true)
                .start();
        try {
            String said = new String(process.getInputStream().readAllBytes(), UTF_8);
            assertEquals(130, process.waitFor(), said);
            return said.strip();
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void nothingFollowsWorkThatWasStoppedInTheLastMoment() throws Exception {
        assertEquals("kept", said(StoppedInTheLastMoment.class));
    }

    @Test
    void noFurtherWorkBeginsWhenItIsStopped() throws Exception {
        assertEquals("", said(StoppedBefore.class));
    }
}
