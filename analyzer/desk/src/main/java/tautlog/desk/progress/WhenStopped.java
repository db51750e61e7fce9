package tautlog.desk.progress;

import java.util.concurrent.Semaphore;

/** What is still done when the program is told to stop, by Ctrl-C or the system, in the middle of long work. */
public final class WhenStopped {
    private final Thread hook;

    private WhenStopped(Runnable last) {
        hook = new Thread(last, "stopped");
    }

    /**
     * From now on until {@link #workIsOver}. Never returns when the program ends already.
     *
     * @param last runs on a thread of its own, while those that work go on; the program ends after it
     */
    public static WhenStopped does(Runnable last) {
        WhenStopped stopped = new WhenStopped(last);
        try {
            Runtime.getRuntime().addShutdownHook(stopped.hook);
        } catch (IllegalStateException e) {
            waitForTheEnd();
        }
        return stopped;
    }

    /** Never returns when the program was told to stop, however shortly before: nothing follows a stop. */
    public void workIsOver() {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            waitForTheEnd();
        }
    }

    private static void waitForTheEnd() {
        new Semaphore(0).acquireUninterruptibly(); // nobody releases it, the end of the program asks nobody
    }
}
