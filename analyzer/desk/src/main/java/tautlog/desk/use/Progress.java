package tautlog.desk.use;

/** Is told how far long work is; from any thread. */
public interface Progress {
    Progress SILENT = (what, done, of) -> {};

    /** @param what what is counted: {@code files}, {@code outings} */
    void done(String what, int done, int of);
}
