package tautlog.logger.recorder;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.beacon.BeaconLamp.Trouble;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/**
 * The recorder thread's work: takes events from the backlog, appends them, commits.
 *
 * <p>A group is closed {@link #GATHER_MILLIS} after its first event came, or sooner when much has come, and committed at
 * once. An outing's first is closed at once: beginning it takes the disk another while. While the disk refuses, the same commit is tried again every {@link #RETRY_MILLIS} and the backlog waits; after
 * {@link #stop} it is tried for {@link #LAST_TRIES_SECONDS} more.
 */
public final class Recorder implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(Recorder.class);
    /** A commit is to start at most 0.5 s after a sample arrives; the rest is for a busy machine. */
    private static final long GATHER_MILLIS = 400;

    private static final long RETRY_MILLIS = 1_000;
    /** Chosen: long beside a commit every half second and beside working off a minute's backlog on a slow board. */
    private static final long HUNG_NANOS = TimeUnit.SECONDS.toNanos(15);

    /** Chosen: no disk that comes back stalls longer at one go, and what comes after the first minute is lost anyway. */
    private static final long LONGEST_STALL_NANOS = TimeUnit.MINUTES.toNanos(10);

    private static final long LAST_TRIES_SECONDS = 10;
    private static final int MOST_SAMPLES_A_COMMIT = 65_536;

    private final Backlog backlog;
    private final RecordingStore store;
    private final BeaconLamp lamp;
    private final Committed committed;
    private final Appender appender = new Appender();
    private @Nullable OutingWriter outing;
    private int uncommittedSamples;

    private volatile long giveUpNanos = Long.MAX_VALUE;
    private volatile Optional<Long> inHandNanos = Optional.empty();
    private volatile Optional<Long> atDiskNanos = Optional.empty();
    private volatile Optional<String> file = Optional.empty();
    private volatile Optional<String> trouble = Optional.empty();
    private volatile Optional<String> lastLink = Optional.empty();
    private volatile Optional<String> failure = Optional.empty();
    private final AtomicLong refusals = new AtomicLong();

    public Recorder(Backlog backlog, RecordingStore store, BeaconLamp lamp) {
        this(backlog, store, lamp, () -> {});
    }

    public Recorder(Backlog backlog, RecordingStore store, BeaconLamp lamp, Committed committed) {
        this.committed = committed;
        this.backlog = backlog;
        this.store = store;
        this.lamp = lamp;
    }

    /** Nothing more is appended to the backlog: the rest is written, then {@link #run} returns. */
    public void stop() {
        giveUpNanos = System.nanoTime() + TimeUnit.SECONDS.toNanos(LAST_TRIES_SECONDS);
        backlog.close();
    }

    private Optional<Long> oldestNanos() {
        Optional<Long> inHand = inHandNanos;
        return inHand.isPresent() ? inHand : backlog.oldestNanos();
    }

    /**
     * Whether something waits for long and no disk is the reason. A disk that stalls or refuses is told on the beacon and in the
     * status and mends itself; only one that keeps a single write for ten minutes counts as hung. Any thread.
     */
    public boolean isHung(long nowNanos) {
        boolean waits =
                oldestNanos().filter(since -> nowNanos - since > HUNG_NANOS).isPresent();
        boolean diskHolds = atDiskNanos
                .filter(since -> nowNanos - since < LONGEST_STALL_NANOS)
                .isPresent();
        return waits && !diskHolds && trouble.isEmpty();
    }

    public RecorderState state() {
        Optional<Long> oldest = oldestNanos();
        double lag = oldest.map(nanos -> (System.nanoTime() - nanos) / 1e9).orElse(0.0);
        return new RecorderState(file, lag, trouble, refusals.get(), lastLink);
    }

    @Override
    public void run() {
        try (store) {
            while (!backlog.isDrained()) {
                backlog.await(outing == null ? 0 : GATHER_MILLIS);
                writeGroup();
            }
            store.close();
            file = store.file(); // closing may have given it its day's name
        } catch (DiskRefusedToTheEnd gone) {
            failed(String.valueOf(gone.getMessage()));
        } catch (RecordingException closing) {
            failed("everything is recorded in " + file.orElse("no file") + ", but that could not be closed in order."
                    + " Copy it together with the -wal file beside it, and check the copy with `tautlog verify`; the"
                    + " next start goes on with it. The disk said: " + closing.getMessage());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private void failed(String words) {
        LOG.error("{}", words);
        failure = Optional.of(words);
    }

    /** Why the recording did not come to an orderly end, in words for a person; empty when it did, or none is reached yet. */
    public Optional<String> failure() {
        return failure;
    }

    private void writeGroup() throws InterruptedException {
        inHandNanos = backlog.oldestNanos();
        Optional<Segment> segment = backlog.take();
        while (segment.isPresent()) {
            Segment events = segment.get();
            while (events.replayNext(appender)) {
                // each event goes to the appender
            }
            backlog.recycle(events);
            segment = backlog.take();
        }
        commit();
        inHandNanos = Optional.empty();
    }

    private void commit() throws InterruptedException {
        OutingWriter open = outing;
        if (open == null) {
            return;
        }
        untilTaken(() -> {
            open.commit();
            return open;
        });
        uncommittedSamples = 0;
        lastLink = Optional.of(open.lastLink());
        committed.committed();
    }

    private interface DiskWork<T> {
        T tryOnce() throws RecordingException;
    }

    private <T> T untilTaken(DiskWork<T> work) throws InterruptedException {
        while (true) {
            try {
                T done = atDisk(work);
                taken();
                return done;
            } catch (RecordingException refused) {
                refused(refused);
            }
        }
    }

    private <T> T atDisk(DiskWork<T> work) throws RecordingException {
        atDiskNanos = Optional.of(System.nanoTime());
        try {
            return work.tryOnce();
        } finally {
            atDiskNanos = Optional.empty();
        }
    }

    private void taken() {
        if (trouble.isPresent()) {
            lamp.mended(Trouble.REFUSED, System.nanoTime());
            trouble = Optional.empty();
            LOG.info(
                    "the disk takes the recording again refusals={} lost_samples={}",
                    refusals.get(),
                    backlog.lostSamples());
        }
    }

    private void refused(RecordingException refusal) throws InterruptedException {
        String words = String.valueOf(refusal.getMessage());
        if (trouble.isEmpty()) {
            LOG.error(
                    "{} Nothing committed is lost; tried again every second, {} s wait in memory.",
                    words,
                    Backlog.HELD_SECONDS);
        }
        lamp.fault(Trouble.REFUSED, System.nanoTime()); // first: who reads of trouble finds the beacon at fault
        refusals.incrementAndGet();
        trouble = Optional.of(words);
        if (System.nanoTime() - giveUpNanos > 0 && giveUpNanos != Long.MAX_VALUE) {
            throw new DiskRefusedToTheEnd(words);
        }
        Thread.sleep(RETRY_MILLIS);
    }

    /** The program ends and the disk still takes nothing. */
    private static final class DiskRefusedToTheEnd extends RuntimeException {
        private static final long serialVersionUID = 1L;

        DiskRefusedToTheEnd(String words) {
            super("stopped while the disk took nothing, what came last is not recorded: " + words);
        }
    }

    /** Appends what the backlog held to the outing that is open. */
    private final class Appender implements LiveEvents {
        private OutingWriter open() {
            if (outing == null) {
                throw new IllegalStateException("an event came outside of an outing");
            }
            return outing;
        }

        @Override
        public void begin(OutingStart start, Optional<Long> utcMicros) {
            try {
                outing = untilTaken(() -> store.begin(start, utcMicros));
                if (!file.equals(store.file())) {
                    file = store.file();
                    LOG.info("recording to {}", file.orElse(""));
                }
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new DiskRefusedToTheEnd("interrupted");
            }
        }

        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            if (uncommittedSamples >= MOST_SAMPLES_A_COMMIT) {
                commitOrGiveUp(); // before samples, never between them and what was found in them
            }
            open().tension(number, tick, flags, counts, from, n);
            uncommittedSamples += n;
        }

        @Override
        public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
            open().shaft(tick, pulses, pulseTicks, n);
        }

        @Override
        public void input(long atNumber, long tick, int selector, int present, int state) {
            open().input(atNumber, tick, selector, present, state);
        }

        @Override
        public void hookup(long atNumber, String id, HookupSource by) {
            open().hookup(atNumber, id, by);
        }

        @Override
        public void mark(long atNumber, String note) {
            open().mark(atNumber, note);
        }

        @Override
        public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
            open().health(tick, supplyMillivolts, temperatureDecidegrees, lost);
        }

        @Override
        public void clock(long tick, long utcMicros) {
            open().clock(tick, utcMicros);
        }

        @Override
        public void zero(long atNumber, int shiftCounts, ZeroSource by) {
            open().zero(atNumber, shiftCounts, by);
        }

        @Override
        public void position(Position position) {
            open().position(position);
        }

        @Override
        public void tally(Tally tally) {
            open().tally(tally);
        }

        @Override
        public void finding(Finding finding) {
            open().finding(finding);
        }

        @Override
        public void second(Second second) {
            open().second(second);
        }

        @Override
        public void end() {
            open().end();
            commitOrGiveUp();
            outing = null;
        }

        private void commitOrGiveUp() {
            try {
                commit();
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new DiskRefusedToTheEnd("interrupted");
            }
        }
    }
}
