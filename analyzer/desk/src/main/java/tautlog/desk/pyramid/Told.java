package tautlog.desk.pyramid;

import tautlog.sample.HookupSource;

/** Something that was told of an outing beside its readings: what a viewer shows or needs to know which limit was in force. */
public sealed interface Told {
    /** From sample {@code number} on hookup {@code id} was on; {@code tick} of the first frame from there on. */
    record Hookup(long number, long tick, String id, HookupSource by) implements Told {}

    /** From sample {@code number} on the switch stood at {@code position}. */
    record Selector(long number, long tick, int position) implements Told {}

    /** A note that a person left; it may be empty. */
    record Mark(long tick, String note) implements Told {}
}
