package tautlog.logger.drive;

import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.drive.DriveState.Stage;
import tautlog.logger.drive.DriveState.Tally;
import tautlog.logger.drive.Mounts.Mount;
import tautlog.logger.recorder.DiskReserve.FreeSpace;
import tautlog.logger.recorder.RecordingFiles;

/**
 * The drive thread's work: sees that a drive is there, has it served, tells how far it is.
 *
 * <p>A drive is served when it is seen first, and again when another recording is begun while it stays in. From then until it is finished,
 * and as long as one in trouble is in, the lamp shows caution. The thread may hang in a drive for ever; nobody
 * waits for it.
 */
public final class DriveWatch implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(DriveWatch.class);
    private static final long LOOK_MILLIS = 1_000;
    /** Chosen: as long as it takes to look up from the socket to the lamp. */
    private static final long LEAST_SHOWN_NANOS = TimeUnit.SECONDS.toNanos(3);

    /** A drive and the recording that was being written when it was served. */
    private record Served(Mount mount, Optional<String> file) {}

    private final Path path;
    private final Mounts mounts;
    private final RecordingFiles files;
    private final FreeSpace space;
    private final Supplier<Optional<String>> beingWritten;
    private final BeaconLamp lamp;
    private final InstantSource clock;
    private Optional<Served> served = Optional.empty();
    private volatile DriveState state;

    /**
     * @param path where the system mounts the drive
     * @param space left on the disk of the recordings
     * @param beingWritten the recording that is being written, if any
     */
    public DriveWatch(
            Path path,
            RecordingFiles files,
            FreeSpace space,
            Supplier<Optional<String>> beingWritten,
            BeaconLamp lamp,
            InstantSource clock) {
        this(path, new Mounts(Mounts.TABLE), files, space, beingWritten, lamp, clock);
    }

    DriveWatch(
            Path path,
            Mounts mounts,
            RecordingFiles files,
            FreeSpace space,
            Supplier<Optional<String>> beingWritten,
            BeaconLamp lamp,
            InstantSource clock) {
        this.path = path;
        this.mounts = mounts;
        this.files = files;
        this.space = space;
        this.beingWritten = beingWritten;
        this.lamp = lamp;
        this.clock = clock;
        state = new DriveState(path, false, Stage.NONE, Optional.empty(), Tally.NOTHING);
    }

    /** How it stands; any thread. */
    public DriveState state() {
        return state;
    }

    /** Runs until interrupted. */
    @Override
    public void run() {
        try {
            while (true) {
                TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
                lookWhateverComes();
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Not even a bug, or memory that runs out, in here may end the recording. */
    void lookWhateverComes() throws InterruptedException {
        try {
            look();
        } catch (RuntimeException | Error bug) {
            tellBug(bug);
        }
    }

    private void tellBug(Throwable bug) {
        try {
            tell(Stage.TROUBLE, new Tally(0, 0, DriveState.ReadBack.NOTHING, List.of("a bug: see the log")));
            LOG.error("bug while a drive was served; recording goes on", bug);
        } catch (RuntimeException | Error again) {
            served = Optional.empty(); // no memory to tell it: the next look tries all anew
        }
    }

    /** One look: serves a drive that is there and was not served. */
    void look() throws InterruptedException {
        Optional<Mount> mount = mounted();
        if (mount.isEmpty()) {
            gone();
            return;
        }
        Served now = new Served(mount.get(), beingWritten.get());
        if (!served.equals(Optional.of(now))) {
            served = Optional.of(now);
            serve(now);
        }
    }

    private Optional<Mount> mounted() {
        try {
            return mounts.drive(path);
        } catch (IOException unknown) {
            return Optional.empty(); // what is not known to be a drive is not written to
        }
    }

    private void gone() {
        if (served.isPresent()) {
            served = Optional.empty();
            lamp.driveLeft(System.nanoTime());
            DriveState last = state;
            state = new DriveState(path, false, last.stage(), last.at(), last.tally());
            LOG.info("the drive was pulled out");
        }
    }

    private void serve(Served now) throws InterruptedException {
        long began = System.nanoTime();
        lamp.driveAtWork(began);
        tell(Stage.WRITING, Tally.NOTHING);
        LOG.info(
                "a drive is there path={} device={} type={}",
                path,
                now.mount().device(),
                now.mount().type());
        Tally tally = new DriveVisit(files, space, clock)
                .serve(
                        path,
                        () -> beingWritten.get().map(Path::of),
                        () -> mounted().equals(Optional.of(now.mount())));
        if (!tally.trouble().isEmpty()) {
            tell(Stage.TROUBLE, tally);
            tally.trouble().forEach(words -> LOG.warn("drive: {}", words));
            return;
        }
        tell(Stage.VERIFIED, tally);
        LOG.info(
                "the drive is finished copied={} there={} read_back={}",
                tally.copied(),
                tally.kept(),
                tally.readBack());
        long left = LEAST_SHOWN_NANOS - (System.nanoTime() - began);
        TimeUnit.NANOSECONDS.sleep(Math.max(0, left));
        lamp.driveLeft(System.nanoTime());
    }

    private void tell(Stage stage, Tally tally) {
        state = new DriveState(path, true, stage, Optional.of(clock.instant()), tally);
    }
}
