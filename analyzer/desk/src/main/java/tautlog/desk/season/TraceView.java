package tautlog.desk.season;

import java.util.List;
import tautlog.desk.pyramid.Band;

/**
 * A trace of a time. Times are microseconds as asked for.
 *
 * @param tension newtons
 * @param shaft revolutions per minute
 * @param steps which limit was in force when, in order
 * @param marks what people left, in order
 * @param outings which lie in the time
 * @param fromSamples whether single samples were read, not buckets
 */
public record TraceView(
        Band tension, Band shaft, List<Step> steps, List<Mark> marks, List<Part> outings, boolean fromSamples) {
    public TraceView {
        steps = List.copyOf(steps);
        marks = List.copyOf(marks);
        outings = List.copyOf(outings);
    }

    /**
     * A limit in force.
     *
     * @param assumed nobody had said which hookup was on
     * @param atLeastFromNewtons from this tension on a reading is only a lower bound
     */
    public record Step(
            long from,
            long to,
            String hookup,
            double limitNewtons,
            boolean atMost,
            String governing,
            boolean assumed,
            double atLeastFromNewtons) {}

    /** A note that a person left in the recording; it may be empty. */
    public record Mark(long at, String note) {}

    /** What is known of an outing's trace. */
    public enum State {
        READ,
        /** It will be, once the background work comes to it. */
        NOT_READ_YET,
        /** Its readings were taken out on the day because the disk was nearly full. */
        THINNED,
        /** Its rig or calibration cannot be used. */
        NOT_READABLE,
        /** It can be read, but the hookup asked for is not in its rig. */
        WITHOUT_THAT_HOOKUP
    }

    /** An outing in the time; {@code why} it is not read, in words, or empty. */
    public record Part(String id, long from, long to, State state, boolean open, String why) {}
}
