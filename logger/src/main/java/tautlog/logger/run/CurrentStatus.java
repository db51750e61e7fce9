package tautlog.logger.run;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.clock.BoardClock;
import tautlog.logger.config.Installation;
import tautlog.logger.control.Status;
import tautlog.logger.control.Status.ClockStatus;
import tautlog.logger.control.Status.DiskStatus;
import tautlog.logger.drive.DriveWatch;
import tautlog.logger.live.LiveOutings;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.recorder.Backlog;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.recorder.Recorder;
import tautlog.logger.recorder.RecorderState;
import tautlog.logger.recorder.Thinning;

/** Asks every part of a run how it stands. Any thread. */
final class CurrentStatus {
    /** How far a run is. */
    enum Stage {
        RUNNING,
        CLOSED
    }

    /** What stands between the ports and the backlog. */
    record Line(
            InstrumentPort port,
            LineReader reader,
            Intake intake,
            HearingWatch hearing,
            Optional<ShaftReader> shaft,
            Optional<GpsReading> gps,
            LiveOutings outings,
            BoardClock clock,
            BeaconLamp lamp) {}

    /** What stands behind the backlog. */
    record Disk(
            Recorder recorder,
            Backlog backlog,
            DiskReserve reserve,
            Thinning thinning,
            Publishing publishing,
            Optional<DriveWatch> drive) {}

    private final Installation installation;
    private final String program;
    private final Board board;
    private final Instant started;
    private final Line line;
    private final Disk disk;

    /** @param program name and version of this program; it started now */
    CurrentStatus(Installation installation, String program, Board board, Line line, Disk disk) {
        this.installation = installation;
        this.program = program;
        this.board = board;
        this.line = line;
        this.disk = disk;
        started = board.clock().instant();
    }

    Status at(Stage stage) {
        return new Status(
                program,
                board.clock().instant(),
                started,
                stage == Stage.CLOSED,
                installation.rig().winch(),
                line.port().name(),
                line.reader().isOpen(),
                line.reader().hangUps(),
                line.lamp().shown(System.nanoTime()).name().toLowerCase(Locale.ROOT),
                installation.config().hasLamp(),
                clock(),
                line.shaft().map(ShaftReader::status),
                line.intake().counts(),
                line.hearing().state(),
                line.outings().readings(),
                line.gps().map(GpsReading::status),
                disk.publishing().states(),
                recording(),
                disk.drive().map(DriveWatch::state));
    }

    private DiskStatus recording() {
        RecorderState state = disk.recorder().state();
        return new DiskStatus(
                installation.config().recordings().toString(),
                state.file(),
                state.lagSeconds(),
                disk.backlog().lostSamples(),
                disk.backlog().lostEvents(),
                state.trouble(),
                disk.reserve().freeBytes(),
                disk.reserve().isLow(),
                state.lastLink(),
                installation.config().keep(),
                disk.thinning().state());
    }

    private ClockStatus clock() {
        String source = installation.config().clock().word();
        return installation.config().isReplayed()
                ? new ClockStatus(source, Optional.empty(), 0)
                : new ClockStatus(
                        source, Optional.of(line.clock().state()), line.clock().steps());
    }
}
