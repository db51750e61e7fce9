package tautlog.logger.cli;

/** What the program's exit codes mean. */
final class ExitCode {
    static final int DONE = 0;
    /** Done, and something was found that a person must look at. */
    static final int FOUND = 1;
    /** Wrong usage or configuration; nothing was started. */
    static final int USAGE = 2;
    /** A recording, port or device could not be used. */
    static final int UNUSABLE = 3;
    /** A bug in the program. */
    static final int BUG = 70;

    private ExitCode() {}
}
