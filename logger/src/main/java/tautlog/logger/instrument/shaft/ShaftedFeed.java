package tautlog.logger.instrument.shaft;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tautlog.logger.instrument.Hearing;
import tautlog.logger.instrument.InstrumentFeed;
import tautlog.logger.instrument.shaft.ShaftSource.TimedFrame;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.OutingSink;
import tautlog.sample.Evidence;
import tautlog.sample.ForwardedEvidence;
import tautlog.sample.Instrument;
import tautlog.sample.Tally;

/**
 * Another instrument's feed whose outing gets its shaft from a {@link ShaftSource}. A shaft that the instrument itself tells of is
 * left out: there is one shaft. Reader thread of the tension.
 */
public final class ShaftedFeed implements InstrumentFeed {
    private static final int MOST_PULSES = 60;

    private final ShaftSource source;
    private final Joined joined;
    private final InstrumentFeed feed;

    /** @param feed makes the other instrument's feed, which tells its outings to the sink that it is given */
    public ShaftedFeed(ShaftSource source, OutingSink outings, Function<OutingSink, InstrumentFeed> feed) {
        this.source = source;
        joined = new Joined(outings);
        this.feed = feed.apply(joined);
    }

    @Override
    public void opened(InstrumentLine line) {
        feed.opened(line);
    }

    @Override
    public void bytes(long nowNanos, byte[] bytes, int n) {
        joined.nowNanos = nowNanos;
        feed.bytes(nowNanos, bytes, n);
        Optional<TimedFrame> frame = source.take();
        while (frame.isPresent()) {
            joined.tell(frame.get());
            frame = source.take();
        }
    }

    @Override
    public void gone() {
        feed.gone();
    }

    @Override
    public Optional<String> unproven() {
        return feed.unproven();
    }

    @Override
    public LineCounts counts() {
        LineCounts own = feed.counts();
        return new LineCounts(withShaft(own.tally()), own.otherChannelFrames(), own.outing());
    }

    private Tally withShaft(Tally tally) {
        Map<String, Long> all = new TreeMap<>(tally.rejected());
        all.putAll(source.faults());
        if (joined.framesOfSameId > 0) {
            all.put(Hearing.SHAFT_SAME_ID, joined.framesOfSameId);
        }
        return new Tally(all, tally.lostFrames(), tally.repeatedFrames(), tally.heldFrames());
    }

    @Override
    public void end() {
        feed.end();
    }

    /** The outing on its way, with the pulses put in. */
    private final class Joined implements OutingSink {
        private final OutingSink next;
        private final long[] pulseTicks = new long[MOST_PULSES];
        private @Nullable Evidence evidence;
        private SteadyOffset time = new SteadyOffset(1);
        private String id = "";
        private long framesOfSameId;
        private long nowNanos;
        private long lastTick;
        private long lastPulseTick;
        private long boot = -1;
        private long bootPulses;
        private long pulses;

        Joined(OutingSink next) {
            this.next = next;
        }

        @Override
        public Evidence begin(Instrument i, long firstTick) {
            id = i.id();
            Instrument shafted = new Instrument(
                    i.id(),
                    i.firmwareMajor(),
                    i.firmwareMinor(),
                    i.boot(),
                    i.tickHz(),
                    i.rateMillihertz(),
                    i.fullScale(),
                    source.pulsesPerRevolution());
            Evidence told = next.begin(shafted, firstTick);
            evidence = told;
            time = new SteadyOffset(i.tickHz());
            lastTick = Long.MIN_VALUE;
            lastPulseTick = Long.MIN_VALUE;
            boot = -1;
            pulses = 0;
            return new ForwardedEvidence(told) {
                @Override
                public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
                    // the instrument's own; there is one shaft
                }

                @Override
                public void tally(Tally tally) {
                    told.tally(withShaft(tally));
                }
            };
        }

        /** Before the outing knows its time, and outside one, a frame has no place. */
        void tell(TimedFrame frame) {
            Evidence told = evidence;
            if (told == null || !time.isKnown()) {
                return;
            }
            if (frame.id().equals(id)) {
                framesOfSameId++; // which of the two ports is whose cannot be told
                return;
            }
            long tick = time.tickAt(frame.nanos());
            if (tick <= lastTick) {
                return; // two offsets were mended against each other by less than a frame: the next tells more pulses
            }
            int n = Math.min(MOST_PULSES, frame.pulseNanos().size());
            for (int i = 0; i < n; i++) {
                long at = Math.min(tick, time.tickAt(frame.pulseNanos().at(i)));
                lastPulseTick = Math.max(lastPulseTick, at);
                pulseTicks[i] = lastPulseTick;
            }
            lastTick = tick;
            told.shaft(tick, unwrapped(frame, n), pulseTicks, n);
        }

        /** Never back: a source that starts again counts on, with a jump that shows that pulses are missing. */
        private long unwrapped(TimedFrame frame, int n) {
            if (boot == -1) {
                bootPulses = 0;
            } else if (frame.boot() != boot) {
                bootPulses = pulses + n + 1 - frame.pulses();
            }
            boot = frame.boot();
            pulses = bootPulses + frame.pulses();
            return pulses;
        }

        @Override
        public void firstSample(long tick) {
            next.firstSample(tick);
        }

        @Override
        public void now(long tick) {
            time.heard(tick, nowNanos);
            next.now(tick);
        }

        @Override
        public void selector(long atNumber, int position) {
            next.selector(atNumber, position);
        }

        @Override
        public void ended(long lastTickHeard) {
            evidence = null;
            next.ended(lastTickHeard);
        }
    }
}
