package tautlog.logger.live;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.clock.BoardClock;
import tautlog.logger.clock.DeviceClock;
import tautlog.logger.clock.HostClock;
import tautlog.logger.clock.TickDating;
import tautlog.logger.config.ClockChoice;
import tautlog.logger.config.Installation;
import tautlog.logger.gps.GpsFix.Place;
import tautlog.logger.gps.GpsReceiver;
import tautlog.logger.recorder.LiveEvents;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.OutingSink;
import tautlog.recording.OutingStart;
import tautlog.rig.Hookup;
import tautlog.rig.Limit;
import tautlog.rig.LineCalibration;
import tautlog.sample.ClockFix;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/** The outings of one run, one after the other. Reader thread only, except {@link #readings}. */
public final class LiveOutings implements OutingSink {
    private static final Logger LOG = LoggerFactory.getLogger(LiveOutings.class);
    private static final long PUBLISH_NANOS = TimeUnit.SECONDS.toNanos(1);
    private final Installation installation;
    private final String program;
    private final LiveEvents events;
    private final BeaconLamp lamp;
    private final HookupInForce hookups;
    private final TickDating dating;
    private final GpsReceiver gps;
    private final BoardClock board;
    private final Optional<Long> deviceStartMicros;
    private final List<String> notesWaiting = new ArrayList<>();

    private @Nullable LiveOuting outing;
    private long nowNanos;
    private long publishedNanos;
    private long placeSecond = Long.MIN_VALUE;
    private Optional<Long> hostMicros = Optional.empty();
    /** When the next outing begins, by the instrument's own ticks. */
    private Optional<Long> deviceMicros;

    private volatile Optional<LiveReadings> readings = Optional.empty();

    /** @param program name and version, as the recording keeps it */
    public LiveOutings(Installation installation, String program, LiveEvents events, BeaconLamp lamp) {
        this(installation, program, events, lamp, new GpsReceiver(), new BoardClock(BoardClock.Own.USED, () -> false));
    }

    /**
     * @param gps told by another thread; a receiver that nobody feeds knows nothing
     * @param board judges this computer's clock
     */
    public LiveOutings(
            Installation installation,
            String program,
            LiveEvents events,
            BeaconLamp lamp,
            GpsReceiver gps,
            BoardClock board) {
        this.installation = installation;
        this.board = board;
        this.gps = gps;
        this.program = program;
        this.events = events;
        this.lamp = lamp;
        hookups = new HookupInForce(installation.rig());
        ClockChoice clock = installation.config().clock();
        deviceStartMicros =
                clock instanceof ClockChoice.Device device ? Optional.of(micros(device.startUtc())) : Optional.empty();
        deviceMicros = deviceStartMicros;
        dating = clock instanceof ClockChoice.Device device ? new DeviceClock(device.startUtc()) : new HostClock();
    }

    private static long micros(Instant instant) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
    }

    /**
     * What comes next arrived now; call it also while nothing comes.
     *
     * @param nanos of a clock that never goes back
     * @param utcMicros by this computer's clock, in microseconds since 1970
     */
    public void arriving(long nanos, long utcMicros) {
        nowNanos = nanos;
        lookAtClock(nanos, utcMicros);
        LiveOuting open = outing;
        if (open != null) {
            open.arriving(nanos);
            if (open.hasSamples()) {
                tellPlace(open);
            }
            if (open.isSilent()) {
                lamp.sensor(BeaconState.FAULT, nanos);
            }
            if (nanos - publishedNanos >= PUBLISH_NANOS) {
                publish(open);
            }
        } else {
            lamp.sensor(BeaconState.FAULT, nanos);
        }
    }

    private void lookAtClock(long nanos, long hostUtcMicros) {
        long stepsBefore = board.steps();
        BoardClock.State before = board.state();
        board.look(nanos, hostUtcMicros, gps.utcMicros(nanos));
        hostMicros = board.utcMicros();
        if (board.steps() != stepsBefore) {
            dating.stepped();
        }
        if (deviceStartMicros.isEmpty()) {
            tellClock(before, stepsBefore);
        }
    }

    private void tellClock(BoardClock.State before, long stepsBefore) {
        BoardClock.State now = board.state();
        if (now == BoardClock.State.KNOWN) {
            if (board.steps() != stepsBefore) {
                LOG.info(
                        "the clock was set, it is now {}; the outing that is on is dated by it from its start",
                        board.utcMicros()
                                .map(micros -> Instant.EPOCH.plus(micros, ChronoUnit.MICROS))
                                .orElseThrow());
            }
        } else if (now != before) {
            LOG.warn("{}", now.words());
        }
    }

    /** Once a second at most, and each of the receiver's words once. */
    private void tellPlace(LiveOuting open) {
        gps.place(nowNanos).filter(place -> placeSecond != second(place)).ifPresent(place -> {
            placeSecond = second(place);
            open.place(place);
        });
    }

    private static long second(Place place) {
        return TimeUnit.NANOSECONDS.toSeconds(place.nanos());
    }

    /** Whether a sample came within the last second. */
    public boolean hearsSamples() {
        LiveOuting open = outing;
        return open != null && open.hasSamples() && !open.isSilent();
    }

    /** There is no line: nothing is known. */
    public void lineGone(long nanos) {
        lamp.sensor(BeaconState.FAULT, nanos);
    }

    /** How the outing that is on, or was last, stands; any thread. */
    public Optional<LiveReadings> readings() {
        return readings;
    }

    private void publish(LiveOuting open) {
        publishedNanos = nowNanos;
        readings = Optional.of(open.readings());
    }

    @Override
    public Evidence begin(Instrument instrument, long firstTick) {
        hookups.outingBegins();
        LOG.info(
                "outing begins instrument={} boot={} rate_hz={} firmware={}.{}",
                instrument.id(),
                instrument.boot(),
                instrument.rate().hertz(),
                instrument.firmwareMajor(),
                instrument.firmwareMinor());
        warnOfShortScale(instrument);
        LineCalibration.misfit(installation.lineCalibration(), instrument, installation.rig())
                .ifPresent(LOG::warn);
        events.begin(
                new OutingStart(
                        instrument,
                        installation.rigToml(),
                        installation.cellCalibration(),
                        program,
                        OutingStart.Source.INSTRUMENT),
                deviceStartMicros.isPresent() ? deviceMicros : hostMicros);
        LiveOuting next = new LiveOuting(instrument, installation, events, hookups, notesWaiting, lamp);
        next.arriving(nowNanos);
        outing = next;
        dating.begin(instrument, next);
        publish(next);
        return next;
    }

    @Override
    public void ended(long lastTick) {
        LiveOuting before = outing;
        if (before != null) {
            deviceMicros = before.fix().map(fix -> later(fix, lastTick, before)).or(() -> deviceMicros);
            publish(before);
            outing = null;
        }
        lamp.sensor(BeaconState.FAULT, nowNanos); // until the next outing's samples nothing is known
        dating.ended(lastTick);
    }

    private static long later(ClockFix fix, long tick, LiveOuting of) {
        return fix.utcMicros() + (tick - fix.tick()) * 1_000_000 / of.tickHz();
    }

    private void warnOfShortScale(Instrument instrument) {
        double most = installation.lineCalibration().newtons(instrument.fullScale());
        Limit lowest = installation.rig().hookups().stream()
                .map(Hookup::limit)
                .min(Comparator.comparing(Limit::newtons))
                .orElseThrow();
        if (most < lowest.newtons().doubleValue()) {
            LOG.warn(
                    "the converter ends at {} N, below the lowest limit of {} N: an overload cannot be seen."
                            + " Check newtons_per_count, or use a cell with a greater range",
                    Math.round(most),
                    Math.round(lowest.newtons().doubleValue()));
        }
    }

    @Override
    public void firstSample(long tick) {
        dating.firstSample(tick);
    }

    @Override
    public void now(long tick) {
        hostMicros.ifPresent(utcMicros -> dating.now(tick, utcMicros));
    }

    @Override
    public void selector(long atNumber, int position) {
        if (!hookups.selector(position)) {
            LOG.warn(
                    "selector position {} is no hookup of the rig; assumed is {}",
                    position,
                    hookups.choice().hookup().id());
        }
        LiveOuting open = outing;
        if (open != null) {
            open.tellHookup(atNumber, hookups.choice());
        }
    }

    /**
     * A person says which hookup is on, leaves a note, or both.
     *
     * @return the sample number at which it acts; empty when that is the first of the outing to come
     */
    public Optional<Long> mark(Optional<Hookup> hookup, Optional<String> note) {
        hookup.ifPresent(hookups::mark);
        LiveOuting open = outing;
        if (open == null || !open.hasSamples()) {
            note.ifPresent(notesWaiting::add);
            return Optional.empty();
        }
        long number = open.nextNumber();
        if (hookup.isPresent()) {
            open.tellHookup(number, hookups.choice());
        }
        note.ifPresent(words -> open.mark(number, words));
        return Optional.of(number);
    }
}
