package tautlog.sample;

/** Evidence passed on unchanged; who changes some of it overrides that. */
public abstract class ForwardedEvidence implements Evidence {
    private final Evidence next;

    protected ForwardedEvidence(Evidence next) {
        this.next = next;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        next.tension(number, tick, flags, counts, from, n);
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        next.shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        next.input(atNumber, tick, selector, present, state);
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        next.hookup(atNumber, id, by);
    }

    @Override
    public void mark(long atNumber, String note) {
        next.mark(atNumber, note);
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        next.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
    }

    @Override
    public void clock(long tick, long utcMicros) {
        next.clock(tick, utcMicros);
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        next.zero(atNumber, shiftCounts, by);
    }

    @Override
    public void position(Position position) {
        next.position(position);
    }

    @Override
    public void tally(Tally tally) {
        next.tally(tally);
    }

    @Override
    public void end() {
        next.end();
    }
}
