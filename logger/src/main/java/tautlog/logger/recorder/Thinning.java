package tautlog.logger.recorder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.recording.RecordingException;
import tautlog.recording.Thinned;
import tautlog.recording.Thinner;

/**
 * The thinning thread's work: while less than the reserve is left on the disk, readings of outings in which nothing was found
 * are taken out of closed recordings, the oldest first, until the reserve is there again ({@code analyzer/RECORDING.md}, "Thinned").
 *
 * <p>It shares nothing with the recorder but the disk. The recording that is written, and that of today, are never touched. Whatever
 * happens here is told and never ends or delays the recording.
 */
public final class Thinning implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(Thinning.class);
    private static final long LOOK_SECONDS = 5;
    /** After a look that gave nothing back. Chosen: a file is read whole to see whether it can. */
    private static final long REST_SECONDS = 60;

    private final RecordingFiles files;
    private final DiskReserve reserve;
    private final Supplier<Optional<String>> written;
    private final Supplier<OptionalLong> utcMicros;
    private final CountDownLatch stopped = new CountDownLatch(1);
    /** Recordings in which nothing is left to thin; what is closed does not change. */
    private final Set<Path> spent = new HashSet<>();

    private volatile ThinningState state = ThinningState.NOTHING;

    /**
     * @param written the file that is being written; empty before the first outing
     * @param utcMicros now, in microseconds since 1970; empty while no clock is known
     */
    public Thinning(
            RecordingFiles files,
            DiskReserve reserve,
            Supplier<Optional<String>> written,
            Supplier<OptionalLong> utcMicros) {
        this.files = files;
        this.reserve = reserve;
        this.written = written;
        this.utcMicros = utcMicros;
    }

    public ThinningState state() {
        return state;
    }

    /** {@link #run} returns as soon as the recording that it is at is done. Any thread. */
    public void stop() {
        stopped.countDown();
    }

    @Override
    public void run() {
        try {
            deleteLeftOvers();
            long rest = LOOK_SECONDS;
            while (!stopped.await(rest, TimeUnit.SECONDS)) {
                rest = !reserve.isLow() || thinAll() ? LOOK_SECONDS : REST_SECONDS;
            }
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException | Error bug) {
            state = new ThinningState(state.outings(), state.bytes(), Optional.of(String.valueOf(bug)));
            LOG.error("bug while thinning: no more is thinned until the next start; the recording goes on", bug);
        }
    }

    private void deleteLeftOvers() {
        try {
            for (Path file : files.oldestFirst()) {
                Thinner.deleteLeftOver(file);
            }
        } catch (IOException left) {
            LOG.warn("what a power cut left of a thinned copy cannot be deleted: {}", left.getMessage());
        }
    }

    /** Goes through the recordings until the reserve is there; false when nothing was given back. */
    private boolean thinAll() {
        long before = state.outings();
        List<String> troubles = new ArrayList<>();
        try {
            for (Path file : files.oldestFirst()) {
                long free = reserve.freeBytes().orElse(DiskReserve.BYTES);
                if (free >= DiskReserve.BYTES || stopped.getCount() == 0) {
                    break;
                }
                if (!isInUse(file) && !spent.contains(file)) {
                    thin(file, free, troubles);
                }
            }
        } catch (RecordingException unlisted) {
            troubles.add(String.valueOf(unlisted.getMessage()));
        }
        tell(troubles.stream().findFirst());
        return state.outings() > before;
    }

    private boolean isInUse(Path file) {
        OptionalLong now = utcMicros.get();
        boolean inUse = written.get().filter(file.toString()::equals).isPresent()
                || (now.isPresent() && files.dated(now.getAsLong()).equals(file));
        if (inUse) {
            spent.remove(file);
        }
        return inUse;
    }

    private void thin(Path file, long free, List<String> troubles) {
        try {
            Thinned thinned = Thinner.thin(file, DiskReserve.BYTES - free, free, utcMicros.get());
            if (thinned.outings() == 0) {
                spent.add(file);
                return;
            }
            state = new ThinningState(
                    state.outings() + thinned.outings(), state.bytes() + thinned.bytes(), state.trouble());
            LOG.warn(
                    "thinned file={} outings={} samples={} bytes={}: the disk is nearly full, nothing but pulls had been"
                            + " found in them",
                    file.getFileName(),
                    thinned.outings(),
                    thinned.samples(),
                    thinned.bytes());
        } catch (RecordingException refused) {
            troubles.add(String.valueOf(refused.getMessage()));
        }
    }

    private void tell(Optional<String> trouble) {
        if (trouble.isPresent() && !trouble.equals(state.trouble())) {
            LOG.warn("not thinned: {}", trouble.get());
        }
        state = new ThinningState(state.outings(), state.bytes(), trouble);
    }
}
