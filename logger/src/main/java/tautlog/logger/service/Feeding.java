package tautlog.logger.service;

import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Says "ready" once, then feeds the watchdog for as long as the logger works: a third of the watchdog's time apart.
 *
 * <p>While the logger does not work nothing is said, and the service manager ends it. A telling that fails is tried again at the
 * next turn.
 */
public final class Feeding implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(Feeding.class);
    private static final int TURNS_A_WATCHDOG = 3;

    private final Supervisor supervisor;
    private final Optional<Duration> watchdog;
    private final BooleanSupplier works;
    private boolean saidReady;
    private boolean withheld;

    /**
     * @param watchdog after which silence the logger is ended; empty when it is not watched
     * @param works whether what matters gets on; must not wait
     */
    Feeding(Supervisor supervisor, Optional<Duration> watchdog, BooleanSupplier works) {
        this.supervisor = supervisor;
        this.watchdog = watchdog;
        this.works = works;
    }

    /** Empty when the logger was not started by a service manager that wants to be told. */
    public static Optional<Feeding> wanted(Map<String, String> environment, BooleanSupplier works) {
        if (environment.getOrDefault("NOTIFY_SOCKET", "").isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Feeding(new SystemdNotify(), watchdog(environment), works));
    }

    /** {@code WATCHDOG_PID} is not compared: the unit's start script becomes the virtual machine, under the same number. */
    private static Optional<Duration> watchdog(Map<String, String> environment) {
        String micros = environment.getOrDefault("WATCHDOG_USEC", "");
        if (!micros.matches("[1-9][0-9]{0,17}")) {
            return Optional.empty();
        }
        return Optional.of(Duration.ofNanos(TimeUnit.MICROSECONDS.toNanos(Long.parseLong(micros))));
    }

    /** Runs until interrupted, or until "ready" is said where nobody watches. */
    @Override
    public void run() {
        try {
            while (turn()) {
                TimeUnit.NANOSECONDS.sleep(
                        watchdog.orElse(Duration.ofSeconds(TURNS_A_WATCHDOG)).toNanos() / TURNS_A_WATCHDOG);
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** @return whether there is another */
    boolean turn() throws InterruptedException {
        try {
            if (!saidReady) {
                supervisor.tell(Supervisor.READY);
                saidReady = true;
            }
            if (watchdog.isPresent()) {
                feed();
            }
        } catch (IOException refused) {
            LOG.warn("the service manager was not told: {}", refused.getMessage());
        }
        return watchdog.isPresent() || !saidReady;
    }

    private void feed() throws IOException, InterruptedException {
        if (works.getAsBoolean()) {
            withheld = false;
            supervisor.tell(Supervisor.ALIVE);
        } else if (!withheld) {
            withheld = true;
            LOG.error(
                    "the thread that reads or the one that records hangs: the watchdog is not fed, the service manager"
                            + " will start the logger again. This is a bug in the program; please report it");
        }
    }
}
