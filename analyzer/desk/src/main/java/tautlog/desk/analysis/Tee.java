package tautlog.desk.analysis;

import java.util.List;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/** Tells several listeners the same, in the order of the list. */
public final class Tee implements Evidence {
    private final List<Evidence> listeners;

    public Tee(Evidence... listeners) {
        this.listeners = List.of(listeners);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        for (Evidence listener : listeners) {
            listener.tension(number, tick, flags, counts, from, n);
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        for (Evidence listener : listeners) {
            listener.shaft(tick, pulses, pulseTicks, n);
        }
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        for (Evidence listener : listeners) {
            listener.input(atNumber, tick, selector, present, state);
        }
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        for (Evidence listener : listeners) {
            listener.hookup(atNumber, id, by);
        }
    }

    @Override
    public void mark(long atNumber, String note) {
        for (Evidence listener : listeners) {
            listener.mark(atNumber, note);
        }
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        for (Evidence listener : listeners) {
            listener.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
        }
    }

    @Override
    public void clock(long tick, long utcMicros) {
        for (Evidence listener : listeners) {
            listener.clock(tick, utcMicros);
        }
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        for (Evidence listener : listeners) {
            listener.zero(atNumber, shiftCounts, by);
        }
    }

    @Override
    public void position(Position position) {
        for (Evidence listener : listeners) {
            listener.position(position);
        }
    }

    @Override
    public void tally(Tally tally) {
        for (Evidence listener : listeners) {
            listener.tally(tally);
        }
    }

    @Override
    public void end() {
        for (Evidence listener : listeners) {
            listener.end();
        }
    }
}
