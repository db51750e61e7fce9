package tautlog.desk.use;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The meters of planned outings, slow and obvious: sample by sample as {@code FINDINGS.md} has them, at 10 samples a second, against a
 * limit of {@link #LIMIT} with the settings as they come.
 */
final class SlowUse {
    static final int LIMIT = 12_000;

    long logged;
    long missing;
    long shaftTicks;
    long withoutShaftTicks;
    long pull;
    long winching;
    long held;
    long pulls;
    final long[] bands = new long[5];
    private final TreeMap<Long, Integer> present = new TreeMap<>();
    private final List<Reading> readings = new ArrayList<>();

    /** @param seat number of the sample at which it sits, -1 before the first */
    private record Reading(long tick, boolean turning, long seat) {}

    /** All outings together: of one winch none counts the time of another. */
    static SlowUse of(List<PlannedOuting> outings) {
        SlowUse sum = new SlowUse();
        Map<String, Long> reach = new HashMap<>();
        List<PlannedOuting> sorted = new ArrayList<>(outings);
        sorted.sort(Comparator.comparingLong(one -> one.startMicros().orElse(Long.MAX_VALUE)));
        for (PlannedOuting outing : sorted) {
            long fromTick = 0;
            if (outing.startMicros().isPresent()) {
                long start = outing.startMicros().getAsLong();
                long until = reach.getOrDefault(outing.winch(), Long.MIN_VALUE);
                if (start + 2_000_000 < until) {
                    fromTick = until - start;
                }
                reach.merge(outing.winch(), start + outing.lastTick(), Math::max);
            }
            sum.add(new SlowUse().outing(outing, fromTick));
        }
        return sum;
    }

    private void add(SlowUse other) {
        logged += other.logged;
        missing += other.missing;
        shaftTicks += other.shaftTicks;
        withoutShaftTicks += other.withoutShaftTicks;
        pull += other.pull;
        winching += other.winching;
        held += other.held;
        pulls += other.pulls;
        for (int i = 0; i < bands.length; i++) {
            bands[i] += other.bands[i];
        }
    }

    private SlowUse outing(PlannedOuting outing, long fromTick) {
        long first = Long.MAX_VALUE;
        long last = outing.frames().get(outing.frames().size() - 1).last();
        for (PlannedOuting.Frame frame : outing.frames()) {
            if (frame.tick() >= fromTick) {
                first = Math.min(first, frame.number());
                for (long number = frame.number(); number <= frame.last() && !frame.open(); number++) {
                    present.put(number, frame.count());
                }
            }
        }
        logged = first == Long.MAX_VALUE ? 0 : last - first + 1;
        missing = logged - present.size();
        readShaft(outing, fromTick);
        meterShaft(fromTick, outing.lastTick());
        meterPulls();
        return this;
    }

    /** wire.md: over one turn, never more than the time since the last pulse allows, 0 after 1 s without one. */
    private void readShaft(PlannedOuting outing, long fromTick) {
        List<Long> train = new ArrayList<>();
        long pulses = -1;
        long trainFrom = 0;
        for (PlannedOuting.Shaft frame : outing.shafts()) {
            if (frame.tick() < fromTick) {
                continue;
            }
            if (pulses < 0 || frame.pulses() - pulses != (frame.pulsed() ? 1 : 0)) {
                train.clear();
                trainFrom = frame.tick();
            }
            pulses = frame.pulses();
            if (frame.pulsed()) {
                train.add(frame.tick());
            }
            long latest = train.isEmpty() ? trainFrom : train.get(train.size() - 1);
            boolean stands = frame.tick() - latest > PlannedOuting.TICK_HZ;
            if (stands || train.size() >= 2) {
                double rpm = 60e6 / (stands ? Double.POSITIVE_INFINITY : latest - train.get(train.size() - 2));
                if (!stands && frame.tick() > latest) {
                    rpm = Math.min(rpm, 60e6 / (frame.tick() - latest));
                }
                Long seat = present.floorKey(frame.tick() / PlannedOuting.TICKS);
                readings.add(new Reading(frame.tick(), rpm >= 60, seat == null ? -1 : seat));
            }
        }
    }

    private void meterShaft(long firstTick, long lastTick) {
        withoutShaftTicks = Math.max(0, lastTick - firstTick);
        for (int i = 0; i + 1 < readings.size(); i++) {
            long from = readings.get(i).tick();
            long to = Math.min(readings.get(i + 1).tick(), from + PlannedOuting.TICK_HZ);
            shaftTicks += readings.get(i).turning() ? to - from : 0;
            withoutShaftTicks -= Math.max(0, Math.min(to, lastTick) - Math.max(from, firstTick));
        }
    }

    private void meterPulls() {
        List<Long> numbers = new ArrayList<>(present.keySet());
        for (int i = 0; i < numbers.size(); i++) {
            if (opens(numbers, i)) {
                int closer = closer(numbers, i);
                int end = closer;
                while (present.get(numbers.get(end)) < 1_500) {
                    end--;
                }
                meter(numbers, i, end);
                i = closer;
            }
        }
    }

    /** Three in a row at 1,500 N or more, without a gap. */
    private boolean opens(List<Long> numbers, int i) {
        for (int k = i; k < i + 3; k++) {
            if (k >= numbers.size()
                    || numbers.get(k) != numbers.get(i) + (k - i)
                    || present.get(numbers.get(k)) < 1_500) {
                return false;
            }
        }
        return true;
    }

    /** Thirty in a row below 750 N, short gaps passed over; or the last before a gap of more than three, or of all. */
    private int closer(List<Long> numbers, int start) {
        int below = 0;
        for (int i = start; i < numbers.size(); i++) {
            below = present.get(numbers.get(i)) < 750 ? below + 1 : 0;
            boolean isLast = i + 1 == numbers.size() || numbers.get(i + 1) - numbers.get(i) - 1 > 3;
            if (below == 30 || isLast) {
                return i;
            }
        }
        throw new IllegalStateException("the last sample closes every pull");
    }

    private void meter(List<Long> numbers, int start, int end) {
        pulls++;
        pull += numbers.get(end) - numbers.get(start) + 1;
        for (int i = start; i <= end; i++) {
            int count = present.get(numbers.get(i));
            int band = 0;
            while (band < 4 && count > LIMIT / 4 * (band + 1)) {
                band++;
            }
            bands[band]++;
        }
        for (long number = numbers.get(start); number <= numbers.get(end); number++) {
            Reading speaks = null;
            for (Reading reading : readings) {
                speaks = reading.seat() < number ? reading : speaks;
            }
            if (speaks != null && number - Math.max(speaks.seat(), present.firstKey() - 1) <= 10) {
                winching += speaks.turning() ? 1 : 0;
                held += speaks.turning() ? 0 : 1;
            }
        }
    }
}
