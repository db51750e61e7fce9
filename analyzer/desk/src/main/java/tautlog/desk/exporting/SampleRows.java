package tautlog.desk.exporting;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.Optional;
import tautlog.desk.analysis.DayReading;
import tautlog.desk.report.JsonFields;
import tautlog.rig.Hookup;
import tautlog.sample.HookupSource;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;
import tautlog.sample.ZeroShift;
import tautlog.sample.ZeroSource;

/** Writes a row for each sample as it comes: counts as the converter gave them, newtons with a moved zero taken off. */
final class SampleRows extends QuietEvidence {
    static final String HEAD =
            "outing,number,tick,utc,counts,tension_n,hookup,limit_n,share,flags,limit_is_at_most,assumed";

    private final DayReading day;
    private final int outing;
    private final Writer out;
    private final SampleTicks ticks;
    private final StringBuilder row = new StringBuilder(160);
    private final ZeroShift zeroShift;
    private int[] asTheyCame = new int[0];
    private int asTheyCameFrom;
    private Hookup hookup;
    private boolean assumed = true;

    SampleRows(DayReading day, int outing, Writer out) {
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
        row.setLength(0);
        row.append(outing).append(',').append(number).append(',').append(tick).append(',');
        day.times().utc(tick).ifPresent(utc -> row.append(JsonFields.time(utc)));
        row.append(',').append(counts).append(',');
        if (open) {
            row.append(",,,"); // counts of an open bridge mean nothing
        } else {
            double newtons = day.calibration().exactNewtons(unshifted).doubleValue();
            double limit = hookup.limit().newtons().doubleValue();
            row.append(JsonFields.number(newtons))
                    .append(',')
                    .append(hookup.id())
                    .append(',');
            row.append(JsonFields.number(limit)).append(',').append(JsonFields.number(newtons / limit));
        }
        row.append(',').append(flags(counts, open)).append(',');
        if (open) {
            row.append(',');
        } else {
            row.append(hookup.limit().isAtMost()).append(',').append(assumed);
        }
        row.append('\n');
        write();
    }

    private String flags(int counts, boolean open) {
        return open ? "open-bridge" : day.instrument().isAtEndStop(counts) ? "end-stop" : "";
    }

    private void write() {
        try {
            out.append(row);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // unwrapped by the export
        }
    }
}
