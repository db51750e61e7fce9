package tautlog.logger.run;

import java.io.PrintWriter;
import java.time.InstantSource;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.beacon.BeaconSender;
import tautlog.logger.config.Installation;
import tautlog.logger.control.Status.ShaftLine;
import tautlog.logger.instrument.Hearing;
import tautlog.logger.live.LiveOutings;
import tautlog.logger.live.LiveReadings;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.PortException;
import tautlog.logger.recorder.LiveEvents;
import tautlog.quantity.ForceUnit;
import tautlog.recording.OutingStart;
import tautlog.sample.QuietEvidence;
import tautlog.sample.Tally;

/** Shows live readings for checking the wiring: the logger's reader without its recorder, and without its beacon. */
public final class LineWatch {
    private static final long LINE_MILLIS = 1_000;

    private final Installation installation;
    private final InstrumentPort port;
    private final LiveOutings outings;
    private final HearingWatch hearing;
    private final Intake intake;
    private final LineReader reader;
    private final Optional<ShaftReader> shaft;

    public LineWatch(Installation installation, InstrumentPort port) {
        this(installation, port, installation.config().shaft().map(ShaftReader::new));
    }

    LineWatch(Installation installation, InstrumentPort port, Optional<ShaftReader> shaft) {
        this.shaft = shaft;
        this.installation = installation;
        this.port = port;
        BeaconLamp lamp = new BeaconLamp();
        LiveEvents nowhere = new Nowhere();
        outings = new LiveOutings(installation, "listen", nowhere, lamp);
        // its beacon thread is never started: an instrument that is only listened to shows fault, as it should
        hearing = new HearingWatch(port.name(), lamp);
        intake = new Intake(
                nowhere,
                outings,
                new Marks(installation.rig()),
                Feeds.of(
                        installation.config(),
                        shaft.map(ShaftReader::source),
                        outings,
                        new BeaconSender(lamp, () -> 0)),
                hearing,
                InstantSource.system());
        reader = new LineReader(port, LineReader.AtHangUp.END, intake);
    }

    /** Prints {@code lines} lines, one each second; stops before when the port's other end closes. */
    public void show(PrintWriter out, int lines) throws PortException, InterruptedException {
        var line = port.open();
        Thread thread = new Thread(
                () -> {
                    try {
                        reader.run(line);
                    } catch (InterruptedException stopped) {
                        Thread.currentThread().interrupt();
                    }
                },
                "reader");
        thread.setDaemon(true);
        thread.start();
        shaft.ifPresent(LineWatch::start);
        for (int i = 0; i < lines && thread.isAlive(); i++) {
            thread.join(LINE_MILLIS);
            out.println(words());
            out.flush();
        }
        reader.stop();
        shaft.ifPresent(ShaftReader::stop);
        thread.join();
    }

    private static void start(ShaftReader shaft) {
        Thread thread = new Thread(shaft, "shaft");
        thread.setDaemon(true); // it may wait for a port that is not there
        thread.start();
    }

    private String words() {
        Optional<LiveReadings> readings = outings.readings();
        Tally tally = intake.counts().tally();
        String rejected = tally.rejected().isEmpty()
                ? ""
                : "  rejected "
                        + tally.rejected().entrySet().stream()
                                .map((Map.Entry<String, Long> kind) -> kind.getKey() + " " + kind.getValue())
                                .collect(Collectors.joining(", "));
        return readings.map(this::words)
                        .orElseGet(() -> intake.unproven()
                                .orElseGet(() ->
                                        "no instrument heard: " + unheard(tally).words()))
                + shaft.map(ShaftReader::status).map(LineWatch::words).orElse("")
                + rejected
                + (tally.lostFrames() > 0 ? "  lost frames " + tally.lostFrames() : "");
    }

    private static String words(ShaftLine shaft) {
        return shaft.open() ? "" : "  shaft port " + shaft.port() + " NOT OPEN";
    }

    /** What came only once counts too: somebody is watching. */
    private Hearing.State unheard(Tally tally) {
        boolean isSilent = hearing.state() == Hearing.State.NOTHING;
        return isSilent && !tally.rejected().isEmpty() ? Hearing.State.NOT_UNDERSTOOD : hearing.state();
    }

    private String words(LiveReadings now) {
        if (now.greatestNewtons().isEmpty() || now.tensionNewtons().isEmpty()) {
            return now.instrument() + "  no sample in the last second";
        }
        ForceUnit unit = installation.rig().units();
        boolean atMost = now.hookup().limit().isAtMost();
        return String.format(
                Locale.ROOT,
                "%s  %s (counts %d)  greatest %s, %s%.0f %% of limit  shaft %s  hookup %s%s%s",
                now.instrument(),
                unit.format(now.tensionNewtons().getAsDouble()),
                now.lastCounts().orElse(0),
                unit.format(now.greatestNewtons().getAsDouble()),
                atMost ? "at least " : "",
                100 * now.share().orElse(0),
                now.shaftRpm().isPresent()
                        ? String.format(Locale.ROOT, "%.0f rpm", now.shaftRpm().getAsDouble())
                        : "unknown",
                now.hookup().id(),
                now.hookupBy().isAssumed() ? " (assumed)" : "",
                now.zero().proven() ? "" : "  zero unproven");
    }

    /** Keeps nothing. */
    private static final class Nowhere extends QuietEvidence implements LiveEvents {
        @Override
        public void begin(OutingStart start, Optional<Long> utcMicros) {}

        @Override
        public void finding(Finding finding) {}

        @Override
        public void second(Second second) {}
    }
}
