package tautlog.desk.progress;

/** Is told how far long work is; from any thread, of one piece of work from one at a time. */
public interface Progress {
    Progress SILENT = new Silent();

    void done(Sofar sofar);

    /** Whether somebody looks on: else nobody need ask how large things are. */
    default boolean isWatched() {
        return true;
    }

    /** The program is told to stop in the middle, and ends after this. */
    default void stopped(Kept kept) {}

    /** Tells nobody. */
    final class Silent implements Progress {
        private Silent() {}

        @Override
        public void done(Sofar sofar) {}

        @Override
        public boolean isWatched() {
            return false;
        }
    }
}
