package tautlog.desk.exporting;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tautlog.desk.analysis.DayReading;
import tautlog.rig.Hookup;
import tautlog.sample.HookupSource;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;
import tautlog.sample.ZeroShift;
import tautlog.sample.ZeroSource;

/** Writes a row for each sample as it comes: counts as the converter gave them, newtons with a moved zero taken off. */
final class SampleRows extends QuietEvidence {
    static final List<Column> COLUMNS = List.of(
            new Column("outing", Column.Type.INT),
            new Column("number", Column.Type.LONG),
            new Column("tick", Column.Type.LONG),
            new Column("utc", Column.Type.TIME),
            new Column("counts", Column.Type.INT),
            new Column("tension_n", Column.Type.NUMBER),
            new Column("hookup", Column.Type.WORD),
            new Column("limit_n", Column.Type.NUMBER),
            new Column("share", Column.Type.NUMBER),
            new Column("flags", Column.Type.WORD),
            new Column("limit_is_at_most", Column.Type.FLAG),
            new Column("assumed", Column.Type.FLAG));

    private final DayReading day;
    private final int outing;
    private final Cells out;
    private final SampleTicks ticks;
    private final ZeroShift zeroShift;
    private int[] asTheyCame = new int[0];
    private int asTheyCameFrom;
    private Hookup hookup;
    private boolean assumed = true;

    SampleRows(DayReading day, int outing, Cells out) {
        this.day = day;
        this.outing = outing;
        this.out = out;
        ticks = new SampleTicks(day.instrument());
        zeroShift = new ZeroShift(day.instrument(), new Rows());
        hookup = day.rig().assumed();
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        Optional<Hookup> known = day.rig().hookup(id);
        hookup = known.orElseGet(() -> day.rig().lowest());
        assumed = known.isEmpty() || by.isAssumed();
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        zeroShift.zero(atNumber, shiftCounts, by);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        asTheyCame = counts;
        asTheyCameFrom = from;
        zeroShift.tension(number, tick, flags, counts, from, n);
    }

    private final class Rows extends QuietEvidence {
        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            ticks.frame(number, tick, n);
            boolean open = (flags & FLAG_OPEN_BRIDGE) != 0;
            for (int k = 0; k < n; k++) {
                row(number + k, ticks.tickOf(k), asTheyCame[asTheyCameFrom + k], counts[from + k], open);
            }
        }
    }

    /** @param unshifted the count less the shift of the zero */
    private void row(long number, long tick, int counts, int unshifted, boolean open) {
        out.whole(outing);
        out.whole(number);
        out.whole(tick);
        Optional<Instant> utc = day.times().utc(tick);
        if (utc.isPresent()) {
            out.time(utc.get());
        } else {
            out.unknown();
        }
        out.whole(counts);
        tension(unshifted, open);
        out.word(flags(counts, open));
        limit(open);
        endRow();
    }

    /** Counts of an open bridge mean nothing. */
    private void tension(int unshifted, boolean open) {
        if (open) {
            unknown(4);
            return;
        }
        double newtons = day.calibration().exactNewtons(unshifted).doubleValue();
        double limit = hookup.limit().newtons().doubleValue();
        out.number(newtons);
        out.word(hookup.id());
        out.number(limit);
        out.number(newtons / limit);
    }

    private void limit(boolean open) {
        if (open) {
            unknown(2);
            return;
        }
        out.flag(hookup.limit().isAtMost());
        out.flag(assumed);
    }

    private void unknown(int cells) {
        for (int i = 0; i < cells; i++) {
            out.unknown();
        }
    }

    private String flags(int counts, boolean open) {
        return open ? "open-bridge" : day.instrument().isAtEndStop(counts) ? "end-stop" : "";
    }

    private void endRow() {
        try {
            out.endRow();
        } catch (IOException e) {
            throw new UncheckedIOException(e); // unwrapped by the export
        }
    }
}
