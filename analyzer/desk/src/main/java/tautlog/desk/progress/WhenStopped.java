package tautlog.desk.progress;

/** What is still done when the program is told to stop, by Ctrl-C or the system, in the middle of long work. */
public final class WhenStopped {
    private final Thread hook;

    private WhenStopped(Runnable last) {
        hook = new Thread(last, "stopped");
    }

    /**
     * From now on until {@link #workIsOver}.
     *
     * @param last runs on a thread of its own, while those that work go on; the program ends after it
     */
    public static WhenStopped does(Runnable last) {
        WhenStopped stopped = new WhenStopped(last);
        try {
            Runtime.getRuntime().addShutdownHook(stopped.hook);
        } catch (IllegalStateException e) {
            return stopped; // it ends already, and nothing was done yet
        }
        return stopped;
    }

    public void workIsOver() {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            return; // it ends already: it was stopped in the last moment
        }
    }
}
