package tautlog.logger.instrument.shaft;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import tautlog.logger.wire.FrameDecoder;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.OutingAssembler;
import tautlog.logger.wire.OutingSink;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

/**
 * Understands the second port: the framed wire format as everywhere, of which only the shaft's frames are kept, in a bounded
 * queue. The shaft's reader thread feeds, another takes.
 */
public final class ShaftSource {
    /** Ten frames a second: half a minute. Chosen: the taker looks ten times a second. */
    private static final int MOST_WAITING = 300;

    /**
     * A frame whose times are this computer's.
     *
     * @param id of the source
     * @param boot tells one start of the source from another
     * @param pulses since that boot
     * @param pulseNanos of each pulse since the frame before, oldest first
     */
    record TimedFrame(String id, long boot, long nanos, long pulses, Pulses pulseNanos) {}

    /** Times that do not change. */
    static final class Pulses {
        private final long[] nanos;

        private Pulses(long[] nanos) {
            this.nanos = nanos;
        }

        int size() {
            return nanos.length;
        }

        long at(int i) {
            return nanos[i];
        }
    }

    private final int pulsesPerRevolution;
    private final FrameDecoder decoder = new FrameDecoder();
    private final OutingAssembler assembler = new OutingAssembler(new Outings());
    private final ArrayBlockingQueue<TimedFrame> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final AtomicLong dropped = new AtomicLong();
    private final AtomicLong otherRatio = new AtomicLong();
    private long nowNanos;
    private volatile LineCounts counts = LineCounts.NONE;

    /** @param pulsesPerRevolution that the source must tell; frames of one that tells another are of no use */
    public ShaftSource(int pulsesPerRevolution) {
        this.pulsesPerRevolution = pulsesPerRevolution;
    }

    int pulsesPerRevolution() {
        return pulsesPerRevolution;
    }

    /** The line was opened anew. */
    public void opened() {
        decoder.reset();
        assembler.opened();
    }

    /** Bytes came, or time passed. */
    public void bytes(long nanos, byte[] bytes, int n) {
        nowNanos = nanos;
        assembler.arriving(nanos);
        decoder.feed(bytes, 0, n, assembler);
        counts = assembler.counts();
    }

    /** The oldest frame that waits; the taker. */
    Optional<TimedFrame> take() {
        return Optional.ofNullable(waiting.poll());
    }

    /** What came to no use, by name, each with SHAFT_ before it; any thread. */
    Map<String, Long> faults() {
        Map<String, Long> faults = new TreeMap<>();
        counts.tally().rejected().forEach((kind, n) -> faults.put("SHAFT_" + kind, n));
        put(faults, "SHAFT_LOST_FRAMES", counts.tally().lostFrames());
        put(faults, "SHAFT_QUEUE_FULL", dropped.get());
        put(faults, "SHAFT_OTHER_PULSES_PER_REVOLUTION", otherRatio.get());
        return faults;
    }

    private static void put(Map<String, Long> faults, String kind, long n) {
        if (n > 0) {
            faults.put(kind, n);
        }
    }

    private final class Outings implements OutingSink {
        private @Nullable SteadyOffset offset;

        @Override
        public Evidence begin(Instrument instrument, long firstTick) {
            SteadyOffset time = new SteadyOffset(instrument.tickHz());
            offset = time;
            boolean isRight = instrument.pulsesPerRevolution() == pulsesPerRevolution;
            return new QuietEvidence() {
                @Override
                public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
                    if (isRight) {
                        keep(instrument, time, tick, pulses, pulseTicks, n);
                    } else {
                        otherRatio.incrementAndGet();
                    }
                }
            };
        }

        private void keep(Instrument by, SteadyOffset time, long tick, long pulses, long[] pulseTicks, int n) {
            time.heard(tick, nowNanos);
            long[] nanos = new long[n];
            for (int i = 0; i < n; i++) {
                nanos[i] = time.nanosAt(pulseTicks[i]);
            }
            if (!waiting.offer(new TimedFrame(by.id(), by.boot(), time.nanosAt(tick), pulses, new Pulses(nanos)))) {
                dropped.incrementAndGet();
            }
        }

        @Override
        public void firstSample(long tick) {
            // a tension on this port is not asked for
        }

        @Override
        public void now(long tick) {
            SteadyOffset time = offset;
            if (time != null) {
                time.heard(tick, nowNanos);
            }
        }

        @Override
        public void selector(long atNumber, int position) {
            // switches belong to the instrument on the first port
        }

        @Override
        public void ended(long lastTick) {
            offset = null;
        }
    }
}
