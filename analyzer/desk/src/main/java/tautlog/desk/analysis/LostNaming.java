package tautlog.desk.analysis;

import tautlog.rig.Hookup;

/**
 * A stretch in which nobody knows which hookup was on: what may have named it is damaged or missing.
 *
 * @param fromTick of its first frame
 * @param toTick of its last frame, before the next naming or the outing's end
 * @param taken counts there: the hookup with the lowest limit
 */
record LostNaming(long fromTick, long toTick, Hookup taken) {}
