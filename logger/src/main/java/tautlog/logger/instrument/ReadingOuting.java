package tautlog.logger.instrument;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import tautlog.logger.config.ReadingScale;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.OutingSink;
import tautlog.sample.Evidence;
import tautlog.sample.Tally;

/**
 * The one outing of an instrument whose readings have neither ticks nor numbers. It begins with the first good reading and
 * lasts until {@link #end}; a line that vanishes meanwhile is a gap.
 *
 * <p>A reading's tick is the time of its arrival, in microseconds since the first one's. Its number is the last plus max(1,
 * round(Δt · rate)), halves up, as readings that are imported are numbered: a pause is a gap, jitter is none. How long the
 * device took to measure and to send is not known, so that all of an outing is late by that.
 *
 * <p>One thread, except that faults may be counted by any.
 */
public final class ReadingOuting {
    private static final long TALLY_NANOS = 1_000_000_000L;
    /** Ticks are millionths of a second, rates thousandths of a hertz: so many of their products are one interval. */
    private static final long ONE = ReadingScale.TICK_HZ * 1_000;

    private final ReadingScale scale;
    private final long boot;
    private final OutingSink sink;
    private final Map<ReadingFault, AtomicLong> faults = new EnumMap<>(ReadingFault.class);
    private final int[] counts = new int[1];
    private @Nullable Evidence evidence;
    private long startNanos;
    private long lastTick;
    private long lastNumber;
    private long tallyNanos;
    private long toldFaults;

    /** @param boot another at each start of the logger; 32 bit */
    public ReadingOuting(ReadingScale scale, long boot, OutingSink sink) {
        this.scale = scale;
        this.boot = boot;
        this.sink = sink;
        for (ReadingFault fault : ReadingFault.values()) {
            faults.put(fault, new AtomicLong());
        }
    }

    /** Time passed; call it before what arrived then. */
    public void arriving(long nowNanos) {
        Evidence open = evidence;
        if (open != null && nowNanos - tallyNanos >= TALLY_NANOS) {
            tallyNanos = nowNanos;
            tell(open);
        }
    }

    private void tell(Evidence open) {
        long now = faultsSoFar();
        if (now != toldFaults) {
            toldFaults = now;
            open.tally(tally());
        }
    }

    /** A reading whose value, as a count, is {@code value}; one beyond the full scale is none. */
    public void reading(long nowNanos, long value) {
        if (value > scale.fullScaleCounts() || value < -scale.fullScaleCounts()) {
            rejected(ReadingFault.OUT_OF_RANGE);
            return;
        }
        sample(nowNanos, (int) value, value == scale.fullScaleCounts() ? Evidence.FLAG_END_STOP : 0);
    }

    /** The device says that the load is above its scale: at least so much. */
    public void overload(long nowNanos) {
        sample(nowNanos, scale.fullScaleCounts(), Evidence.FLAG_END_STOP);
    }

    /** The device says that the load is below its scale. */
    public void underload(long nowNanos) {
        sample(nowNanos, -scale.fullScaleCounts() - 1, Evidence.FLAG_END_STOP);
    }

    private void sample(long nowNanos, int value, int flags) {
        Evidence open = evidence;
        boolean isFirst = open == null;
        if (open == null) {
            startNanos = nowNanos;
            tallyNanos = nowNanos;
            open = sink.begin(scale.instrument(boot), 0);
            evidence = open;
        }
        long tick = (nowNanos - startNanos) / 1_000;
        if (isFirst) {
            sink.firstSample(tick);
        } else {
            lastNumber += Math.max(1, intervals(tick - lastTick));
        }
        lastTick = tick;
        sink.now(tick);
        counts[0] = value;
        open.tension(lastNumber, tick, flags, counts, 0, 1);
    }

    /** round(Δt · rate), halves up, in whole numbers. */
    private long intervals(long ticks) {
        return Math.floorDiv(2 * ticks * scale.rateMillihertz() + ONE, 2 * ONE);
    }

    /** Something was no reading; any thread. */
    public void rejected(ReadingFault fault) {
        Objects.requireNonNull(faults.get(fault)).incrementAndGet();
    }

    private long faultsSoFar() {
        long sum = 0;
        for (AtomicLong count : faults.values()) {
            sum += count.get();
        }
        return sum;
    }

    private Tally tally() {
        Map<String, Long> byName = new TreeMap<>();
        faults.forEach((fault, count) -> {
            if (count.get() > 0) {
                byName.put(fault.name(), count.get());
            }
        });
        return new Tally(byName, 0, 0, 0);
    }

    public LineCounts counts() {
        return new LineCounts(tally(), 0, evidence == null ? LineCounts.OutingState.NONE : LineCounts.OutingState.ON);
    }

    /** The outing ends, if one began. */
    public void end() {
        Evidence open = evidence;
        if (open != null) {
            open.tally(tally());
            open.end();
            evidence = null;
            sink.ended(lastTick);
        }
    }
}
