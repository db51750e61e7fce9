package tautlog.logger.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.beacon.BeaconSender;
import tautlog.logger.clock.BoardClock;
import tautlog.logger.config.ClockChoice;
import tautlog.logger.config.Installation;
import tautlog.logger.config.KeepChoice;
import tautlog.logger.control.ControlServer;
import tautlog.logger.control.Controlled;
import tautlog.logger.control.MarkAnswer;
import tautlog.logger.control.Status;
import tautlog.logger.control.StatusFile;
import tautlog.logger.drive.DriveWatch;
import tautlog.logger.gps.GpsReceiver;
import tautlog.logger.instrument.InstrumentFeed;
import tautlog.logger.live.LiveOutings;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.PortException;
import tautlog.logger.recorder.Backlog;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.recorder.InterruptedOutings;
import tautlog.logger.recorder.Overflow;
import tautlog.logger.recorder.Recorder;
import tautlog.logger.recorder.RecorderState;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.logger.recorder.RecordingsFolder;
import tautlog.logger.recorder.Thinning;
import tautlog.logger.recorder.TrialRecording;
import tautlog.logger.run.CurrentStatus.Stage;
import tautlog.logger.service.Feeding;
import tautlog.recording.RecordingException;

/**
 * A logger from its start to its end: every stage of a sample's way from the port to the recording, and the threads.
 *
 * <p>{@link #run} does it all and returns when the line has ended or {@link #stop} was called. The stages, in order: {@link
 * InstrumentPort} ▶ {@link LineReader} ▶ {@link Intake} (the instrument's feed) ▶ {@link LiveOutings} (hookup, detectors) ▶
 * {@link Backlog} ▶ {@link Recorder} ▶ {@link DayFiles}.
 */
public final class LoggerRun implements Controlled {
    private static final Logger LOG = LoggerFactory.getLogger(LoggerRun.class);
    private static final long LOOK_MILLIS = 5_000;
    private static final int LOOKS_PER_STATUS = 12;
    private static final long STOP_MILLIS = 5_000;
    /** For what a visit leaves here to be deleted; a drive that hangs is waited for no longer. Chosen. */
    private static final long DRIVE_STOP_MILLIS = 1_000;

    /** When a run ends by itself. */
    public enum Until {
        /** Never: a port that vanishes is opened again. */
        STOPPED,
        /** When the port's other end is closed. */
        CLOSED
    }

    private final Installation installation;
    private final InstrumentPort port;
    private final Board board;
    private final RecordingFiles files;
    private final StatusFile statusFile;
    private final BeaconLamp lamp = new BeaconLamp();
    private final BeaconSender beacon;
    private final Backlog backlog;
    private final Publishing publishing;
    private final Recorder recorder;
    private final DiskReserve reserve;
    private final Thinning thinning;
    private final Marks marks;
    private final Optional<GpsReading> gps;
    private final BoardClock boardClock;
    private final Optional<DriveWatch> drive;
    private final LiveOutings outings;
    private final Optional<ShaftReader> shaft;
    private final HearingWatch hearing;
    private final Intake intake;
    private final LineReader reader;
    private final CurrentStatus current;
    private boolean toldBug;
    private final CountDownLatch finished = new CountDownLatch(1);
    private volatile Optional<Throwable> bug = Optional.empty();
    private volatile boolean stopping;

    /** @param program name and version of this program */
    public LoggerRun(Installation installation, InstrumentPort port, Until until, String program) {
        this(
                installation,
                port,
                until,
                program,
                Board.here(installation.config().recordings()));
    }

    LoggerRun(Installation installation, InstrumentPort port, Until until, String program, Board board) {
        this.installation = installation;
        this.board = board;
        this.port = port;
        Path recordings = installation.config().recordings();
        files = new RecordingFiles(recordings, installation.rig().winch());
        statusFile = new StatusFile(recordings);
        backlog = new Backlog(installation.config().isReplayed() ? Overflow.WAIT : Overflow.LOSE);
        publishing = new Publishing(installation, files, board.clock(), () -> status().json());
        recorder = new Recorder(backlog, board.disk().apply(files), lamp, publishing.signal());
        beacon = new BeaconSender(lamp, () -> recorder.state().lagSeconds());
        reserve = new DiskReserve(board.space(), lamp);
        thinning = new Thinning(files, reserve, () -> recorder.state().file(), this::utcMicros);
        marks = new Marks(installation.rig());
        GpsReceiver receiver = new GpsReceiver();
        gps = installation.config().gps().map(choice -> new GpsReading(choice, receiver));
        boardClock = new BoardClock(
                installation.config().clock() instanceof ClockChoice.Gps
                        ? BoardClock.Own.LEFT_OUT
                        : BoardClock.Own.USED,
                board.synchronised());
        drive = installation
                .config()
                .drive()
                .map(path -> new DriveWatch(
                        path, files, board.space(), () -> recorder.state().file(), lamp, board.clock()));
        outings = new LiveOutings(installation, program, backlog, lamp, receiver, boardClock);
        shaft = installation.config().shaft().map(ShaftReader::new);
        InstrumentFeed feed = Feeds.of(installation.config(), shaft.map(ShaftReader::source), outings, beacon);
        hearing = new HearingWatch(port.name(), lamp);
        intake = new Intake(backlog, outings, marks, feed, hearing, board.clock());
        reader = new LineReader(
                port, until == Until.CLOSED ? LineReader.AtHangUp.END : LineReader.AtHangUp.REOPEN, intake);
        current = new CurrentStatus(
                installation,
                program,
                board,
                new CurrentStatus.Line(port, reader, intake, hearing, shaft, gps, outings, boardClock, lamp),
                new CurrentStatus.Disk(recorder, backlog, reserve, thinning, publishing, drive));
    }

    /** By the computer's clock, when it knows the time. */
    private OptionalLong utcMicros() {
        return boardClock.isOwnKnown()
                ? OptionalLong.of(
                        ChronoUnit.MICROS.between(Instant.EPOCH, board.clock().instant()))
                : OptionalLong.empty();
    }

    /**
     * Records until the line ends or {@link #stop}.
     *
     * @throws PortException if the port cannot be opened at the start
     * @throws RecordingException if the recordings folder or the day's recording cannot be used at the start, for another reason
     *     than a full disk; if the disk took nothing up to the end, or the recording could not be closed
     */
    public void run() throws PortException, RecordingException, InterruptedException {
        try (RecordingsFolder folder =
                RecordingsFolder.claim(installation.config().recordings())) {
            TrialRecording.writeAndDelete(folder.path());
            finishInterrupted();
            LOG.info(
                    "started port={} kind={} lamp={} recordings={} winch={}",
                    port.name(),
                    installation.config().instrument().word(),
                    installation.config().hasLamp() ? "on the instrument" : "none: this kind of instrument has none",
                    folder.path(),
                    installation.rig().winch());
            record(port.open());
        } finally {
            finished.countDown();
        }
        Optional<String> failure = failure();
        if (failure.isPresent()) {
            throw new RecordingException(failure.get());
        }
    }

    /** A full disk ends nothing here: what comes waits in memory for room, and beacon and status say so. */
    private void finishInterrupted() throws RecordingException {
        try {
            InterruptedOutings interrupted = new InterruptedOutings(files);
            interrupted.finishAll(files.dated(startMicros()));
            interrupted.newestEndMicros().ifPresent(boardClock::newestRecording);
        } catch (RecordingException refused) {
            if (!reserve.isUsedUp()) {
                throw refused;
            }
            LOG.error(
                    "the disk of the recordings is full; the logger starts all the same and tries again every second."
                            + " Copy old recordings elsewhere, check the copies with `tautlog verify`, delete them"
                            + " here. The disk said: {}",
                    refused.getMessage());
        }
    }

    private long startMicros() {
        Instant start = installation.config().clock() instanceof ClockChoice.Device device
                ? device.startUtc()
                : board.clock().instant();
        return ChronoUnit.MICROS.between(Instant.EPOCH, start);
    }

    private void record(InstrumentLine line) throws InterruptedException {
        Thread readerThread = thread("reader", () -> read(line));
        Thread recorderThread = thread("recorder", recorder);
        Optional<ControlServer> control = control();
        recorderThread.start();
        Thread beaconThread = startDaemon("beacon", beacon); // it may wait for an instrument that reads nothing
        readerThread.start();
        shaft.ifPresent(other -> thread("shaft", other).start());
        gps.ifPresent(reading -> startDaemon("gps", reading));
        publishing.start();
        Thread thinningThread = BesideRecording.thread("thinning", thinning); // a cut while it thins costs nothing
        if (installation.config().keep() == KeepChoice.FINDINGS) {
            thinningThread.start();
        }
        control.ifPresent(server -> startDaemon("control", server));
        Feeding.wanted(System.getenv(), this::gettingOn).ifPresent(feeding -> startDaemon("service", feeding));
        Optional<Thread> driveThread =
                drive.map(watch -> BesideRecording.thread("drive", watch)); // it may wait for a drive that hangs
        driveThread.ifPresent(Thread::start);
        watch(readerThread);
        thinning.stop();
        driveThread.ifPresent(Thread::interrupt); // it reads nothing more; for what it reads now, see RecordingDoor
        finish(readerThread, recorderThread);
        if (driveThread.isPresent()) {
            driveThread.get().join(DRIVE_STOP_MILLIS);
        }
        thinningThread.join(STOP_MILLIS);
        beaconThread.interrupt();
        shaft.ifPresent(ShaftReader::stop);
        gps.ifPresent(GpsReading::stop);
        control.ifPresent(LoggerRun::close);
    }

    /** Whether reader and recorder do their work. A replayed instrument's reader may wait for the disk as long as it takes. */
    private boolean gettingOn() {
        long now = System.nanoTime();
        return (installation.config().isReplayed() || !reader.isHung(now)) && !recorder.isHung(now);
    }

    private Thread startDaemon(String name, Runnable work) {
        Thread thread = thread(name, work);
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private Thread thread(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setUncaughtExceptionHandler((where, thrown) -> {
            bug = Optional.of(thrown);
            stop();
            LOG.error("bug in thread {}; the recording is closed", where.getName(), thrown);
        });
        return thread;
    }

    private void read(InstrumentLine line) {
        try {
            reader.run(line);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        intake.end();
    }

    private Optional<ControlServer> control() {
        try {
            return Optional.of(ControlServer.open(installation.config().recordings(), this));
        } catch (IOException | IllegalArgumentException refused) {
            LOG.warn(
                    "status and mark cannot reach this logger: no socket in the system's temporary folder ({});"
                            + " remove a file of that name, or give the user the right to write there",
                    refused.getMessage());
            return Optional.empty();
        }
    }

    private static void close(ControlServer server) {
        try {
            server.close();
        } catch (IOException e) {
            LOG.debug("closing the control socket: {}", e.getMessage());
        }
    }

    /** Waits for the reader's end; looks at the disk's room all the while, and leaves the status each minute. */
    private void watch(Thread readerThread) throws InterruptedException {
        for (int look = 0; readerThread.isAlive() && !stopping; look++) {
            whateverComes(() -> reserve.look(System.nanoTime()));
            if (look % LOOKS_PER_STATUS == 0) {
                whateverComes(() -> writeStatus(Stage.RUNNING));
            }
            readerThread.join(LOOK_MILLIS);
        }
    }

    /** Neither a bug nor memory that runs out in here may leave the recording without somebody who closes it. */
    private void whateverComes(Runnable work) {
        try {
            work.run();
        } catch (RuntimeException | Error thrown) {
            if (!toldBug) {
                toldBug = true;
                LOG.error("bug while disk and status were looked after; the recording goes on", thrown);
            }
        }
    }

    private void finish(Thread readerThread, Thread recorderThread) throws InterruptedException {
        readerThread.join(STOP_MILLIS); // at once, unless it is held up by a disk that stalls
        recorder.stop();
        readerThread.join(STOP_MILLIS);
        recorderThread.join();
        publishing.stop();
        whateverComes(() -> writeStatus(Stage.CLOSED));
        RecorderState state = recorder.state();
        LOG.info(
                "stopped recording={} hang_ups={} lost_samples={} last_link={}",
                state.file().orElse("none"),
                reader.hangUps(),
                backlog.lostSamples(),
                state.lastLink().orElse("none"));
    }

    /** Asks the run to end; {@link #run} returns soon after. Any thread. */
    public void stop() {
        stopping = true;
        reader.stop();
        shaft.ifPresent(ShaftReader::stop);
    }

    /**
     * Waits until the recording is closed.
     *
     * @return false if it is not within {@code millis}
     */
    public boolean awaitFinished(long millis) throws InterruptedException {
        return finished.await(millis, TimeUnit.MILLISECONDS);
    }

    /** The recording written last; empty when no outing began. */
    public Optional<String> recording() {
        return recorder.state().file();
    }

    /** Why the recording did not come to an orderly end, in words for a person; empty when it did. */
    public Optional<String> failure() {
        return recorder.failure();
    }

    /** What a bug threw, if one ended this run. */
    public Optional<Throwable> bug() {
        return bug;
    }

    @Override
    public MarkAnswer mark(Optional<String> hookup, Optional<String> note) throws InterruptedException {
        return marks.leave(hookup, note);
    }

    @Override
    public Status status() {
        return current.at(Stage.RUNNING);
    }

    private void writeStatus(Stage stage) {
        try {
            statusFile.write(current.at(stage));
        } catch (IOException refused) {
            LOG.debug("status.json is not written: {}", refused.getMessage());
        }
    }
}
