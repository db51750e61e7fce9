package tautlog.sample;

/** Evidence that nobody listens to; who needs some of it overrides that. */
public class QuietEvidence implements Evidence {
    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {}

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {}

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {}

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {}

    @Override
    public void mark(long atNumber, String note) {}

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {}

    @Override
    public void clock(long tick, long utcMicros) {}

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {}

    @Override
    public void position(Position position) {}

    @Override
    public void tally(Tally tally) {}

    @Override
    public void end() {}
}
