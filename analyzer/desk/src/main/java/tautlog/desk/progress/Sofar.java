package tautlog.desk.progress;

/**
 * How far a piece of work is.
 *
 * @param what what is counted: {@code files}, {@code outings}
 * @param done how many are done
 * @param of how many there are
 * @param size of those that were read, in bytes or samples; what is remembered and not read has none
 * @param ofSize of all that are read; 0 when nobody asked
 */
public record Sofar(String what, int done, int of, long size, long ofSize) {
    public boolean isLast() {
        return done == of;
    }
}
