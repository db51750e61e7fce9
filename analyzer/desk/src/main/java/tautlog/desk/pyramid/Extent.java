package tautlog.desk.pyramid;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tautlog.detect.ShaftSpeed;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;
import tautlog.sample.ZeroSource;

/**
 * What a pyramid keeps of a piece of an outing, built from its evidence. The sealed rows of an outing are one such piece, what is not
 * sealed yet another. Samples of frames with an open bridge are missing samples.
 */
final class Extent extends QuietEvidence {
    /** A longer jump of the sample numbers begins a new stretch, so that a jump costs no memory. */
    private static final long LONG_GAP = 64L * Stretch.SAMPLES;

    private static final int SHAFT_READINGS = 64;
    /** Shaft speeds are kept in thousandths of a revolution per minute. */
    static final double SHAFT_UNITS = 1_000;

    final List<Stretch> stretches = new ArrayList<>();
    final Levels shaft;
    final List<Told> told = new ArrayList<>();
    private final List<Told> waiting = new ArrayList<>();
    private final SampleTicks ticks;
    private final ShaftSpeed speed;
    private final Instrument instrument;
    private long zeroNumber = Long.MAX_VALUE;
    private int zeroNext;
    private int zeroShift;
    private boolean isZeroTold;
    private int selector = -1;

    Extent(Instrument instrument) {
        this(instrument, new Levels());
    }

    private Extent(Instrument instrument, Levels shaft) {
        this.instrument = instrument;
        this.shaft = shaft;
        ticks = new SampleTicks(instrument);
        speed = new ShaftSpeed(instrument);
    }

    /** An extent for what follows this one: it goes on under the same zero. */
    Extent following() {
        Extent next = new Extent(instrument);
        next.zeroNumber = zeroNumber;
        next.zeroNext = zeroNext;
        next.zeroShift = zeroShift;
        next.isZeroTold = isZeroTold;
        return next;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        ticks.frame(number, tick, n);
        settle(tick);
        if ((flags & FLAG_OPEN_BRIDGE) != 0) {
            return;
        }
        int before = (int) Math.max(0, Math.min(n, zeroNumber - number));
        piece(number, counts, from, 0, before);
        if (before < n) {
            moveZero(number + before);
            piece(number, counts, from, before, n);
        }
    }

    private void piece(long number, int[] counts, int from, int begin, int end) {
        if (begin < end) {
            stretchFor(number + begin)
                    .add(number + begin, counts, from + begin, end - begin, k -> ticks.tickOf(begin + k));
        }
    }

    private void moveZero(long number) {
        if (number >= zeroNumber) {
            zeroShift = zeroNext;
            isZeroTold = true;
            zeroNumber = Long.MAX_VALUE;
        }
    }

    private Stretch stretchFor(long number) {
        if (stretches.isEmpty() || !goesOn(stretches.get(stretches.size() - 1), number)) {
            stretches.add(new Stretch(number, zeroShift, isZeroTold, new Levels()));
        }
        return stretches.get(stretches.size() - 1);
    }

    private boolean goesOn(Stretch last, long number) {
        return last.zeroShift == zeroShift && last.isZeroTold == isZeroTold && number - last.next <= LONG_GAP;
    }

    private void settle(long tick) {
        if (waiting.isEmpty()) {
            return;
        }
        for (Told one : waiting) {
            if (one instanceof Told.Hookup hookup) {
                told.add(new Told.Hookup(hookup.number(), tick, hookup.id(), hookup.by()));
            } else if (one instanceof Told.Selector turned) {
                told.add(new Told.Selector(turned.number(), tick, turned.position()));
            } else if (one instanceof Told.Mark mark) {
                told.add(new Told.Mark(tick, mark.note()));
            }
        }
        waiting.clear();
    }

    /** All that was told, also what no frame followed: that stands at {@code lastTick}. */
    List<Told> toldUntil(long lastTick) {
        settle(lastTick);
        return told;
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        zeroNumber = atNumber;
        zeroNext = shiftCounts;
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        waiting.add(new Told.Hookup(atNumber, 0, id, by));
    }

    @Override
    public void input(long atNumber, long tick, int position, int present, int state) {
        if (position != selector) {
            selector = position;
            waiting.add(new Told.Selector(atNumber, 0, position));
        }
    }

    @Override
    public void mark(long atNumber, String note) {
        waiting.add(new Told.Mark(0, note));
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        if (instrument.pulsesPerRevolution() == 0) {
            return;
        }
        double rpm = speed.frame(tick, pulses, pulseTicks, n);
        if (!Double.isNaN(rpm)) {
            int units = units(rpm);
            if (shaft.buckets() == 0 || shaft.present(shaft.buckets() - 1) == SHAFT_READINGS) {
                shaft.append(tick);
            }
            shaft.add(units, units, 1);
        }
    }

    static int units(double rpm) {
        return (int) Math.min(Integer.MAX_VALUE - 1, Math.round(rpm * SHAFT_UNITS));
    }

    void write(DataOutput out) throws IOException {
        out.writeInt(stretches.size());
        for (Stretch stretch : stretches) {
            stretch.write(out);
        }
        shaft.write(out);
        out.writeInt(told.size());
        for (Told one : told) {
            ToldCodec.write(one, out);
        }
    }

    static Extent read(Instrument instrument, DataInput in) throws IOException {
        List<Stretch> stretches = new ArrayList<>();
        int n = in.readInt();
        for (int i = 0; i < n; i++) {
            stretches.add(Stretch.read(in));
        }
        Extent read = new Extent(instrument, Levels.read(in));
        read.stretches.addAll(stretches);
        int told = in.readInt();
        for (int i = 0; i < told; i++) {
            read.told.add(ToldCodec.read(in));
        }
        return read;
    }
}
