package tautlog.desk.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.HookupTelling;
import tautlog.desk.analysis.HookupTrack;
import tautlog.desk.analysis.OutingReading;
import tautlog.desk.pyramid.Band;
import tautlog.desk.pyramid.OutingPyramid;
import tautlog.desk.pyramid.Scale;
import tautlog.desk.pyramid.Told;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.rig.Hookup;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Evidence;
import tautlog.sample.OutingClock;

/** Puts the pyramids of all outings in a time together, read with the rig and calibration asked for. Safe for several threads. */
public final class Trace {
    /** Chosen: several seasons under a few questions; then it begins anew. */
    private static final int MOST_READINGS = 2_000;

    private final SeasonWatch watch;
    private final Map<String, OutingReading> readings = new ConcurrentHashMap<>();

    public Trace(SeasonWatch watch) {
        this.watch = watch;
    }

    /** What of {@code ask} is known now. */
    public TraceView view(TraceAsk ask) throws RecordingException {
        Assembly assembly = new Assembly(ask);
        for (KnownOuting outing : watch.season().outings()) {
            boolean isAsked = ask.outing().isPresent()
                    ? ask.outing().get().equals(outing.id())
                    : outing.hasClock() && outing.winch().equals(ask.winch());
            if (isAsked) {
                assembly.add(outing);
            }
        }
        return assembly.view();
    }

    /** The rig that an outing is read with, its limits worked out; empty when it cannot be read. */
    public Optional<Rig> rig(KnownOuting outing, WhatIf whatIf) {
        try {
            return Optional.of(reading(outing, whatIf).rig());
        } catch (ConfigException | RecordingException e) {
            return Optional.empty();
        }
    }

    private OutingReading reading(KnownOuting outing, WhatIf whatIf) throws ConfigException, RecordingException {
        String key = outing.id() + " " + whatIf.key();
        OutingReading known = readings.get(key);
        if (known != null) {
            return known;
        }
        if (readings.size() > MOST_READINGS) {
            readings.clear();
        }
        OutingReading read =
                OutingReading.of(outing.file(), outing.outing(), watch.offer().question(whatIf));
        readings.put(key, read);
        return read;
    }

    /** One answer in the making. */
    private final class Assembly {
        private final TraceAsk ask;
        private final Band tension;
        private final Band shaft;
        private final List<TraceView.Step> steps = new ArrayList<>();
        private final List<TraceView.Mark> marks = new ArrayList<>();
        private final List<TraceView.Part> parts = new ArrayList<>();
        private boolean fromSamples;

        Assembly(TraceAsk ask) {
            this.ask = ask;
            tension = new Band(ask.from(), ask.to(), ask.columns());
            shaft = new Band(ask.from(), ask.to(), ask.columns());
        }

        TraceView view() {
            return new TraceView(tension, shaft, steps, marks, parts, fromSamples);
        }

        void add(KnownOuting known) throws RecordingException {
            Outing outing = known.outing();
            Scale.Axis axis = axis(known);
            Optional<OutingPyramid> pyramid = watch.pyramid(known);
            long first = axis.micros(outing.firstTick());
            long end = axis.micros(pyramid.map(OutingPyramid::endTick).orElse(outing.lastTick()));
            if (end <= ask.from() || first >= ask.to()) {
                return;
            }
            TraceView.State state = TraceView.State.NOT_READ_YET;
            String why = "";
            if (outing.thinned()) {
                state = TraceView.State.THINNED;
                tension.cover(first, end);
            } else if (pyramid.isPresent()) {
                try {
                    state = show(known, pyramid.get(), axis, end);
                } catch (ConfigException e) {
                    state = TraceView.State.NOT_READABLE;
                    why = String.valueOf(e.getMessage());
                }
            }
            if (state == TraceView.State.NOT_READ_YET || state == TraceView.State.NOT_READABLE) {
                tension.cover(first, end);
            }
            parts.add(new TraceView.Part(known.id(), first, end, state, !outing.closed(), why));
        }

        private TraceView.State show(KnownOuting known, OutingPyramid pyramid, Scale.Axis axis, long end)
                throws ConfigException, RecordingException {
            Outing outing = known.outing();
            OutingReading reading = reading(known, ask.whatIf());
            Scale scale = new Scale(
                    outing.start().instrument(), outing.start().calibration().response(), reading.line(), axis);
            fromSamples |= pyramid.show(outing, scale, () -> Recording.open(known.file()), tension, shaft);
            List<Told> told = pyramid.told();
            told.stream()
                    .filter(Told.Mark.class::isInstance)
                    .map(Told.Mark.class::cast)
                    .map(mark -> new TraceView.Mark(axis.micros(mark.tick()), mark.note()))
                    .filter(mark -> mark.at() >= ask.from() && mark.at() < ask.to())
                    .forEach(marks::add);
            boolean has = ask.whatIf()
                    .hookup()
                    .map(id -> reading.rig().hookup(id).isPresent())
                    .orElse(true);
            if (!has) {
                return TraceView.State.WITHOUT_THAT_HOOKUP;
            }
            limits(outing, reading, told, axis, end);
            return TraceView.State.READ;
        }

        private void limits(Outing outing, OutingReading reading, List<Told> told, Scale.Axis axis, long end) {
            HookupTrack track = HookupTelling.of(
                    reading.rig(), ask.whatIf().hookup(), outing.firstNumber(), sink -> tell(told, sink));
            List<HookupTrack.Turn> turns = track.turns();
            for (int i = 0; i < turns.size(); i++) {
                long from = i == 0 ? axis.micros(outing.firstTick()) : axis.micros(tick(turns.get(i), told, outing));
                long to = i + 1 < turns.size() ? axis.micros(tick(turns.get(i + 1), told, outing)) : end;
                if (to > ask.from() && from < ask.to()) {
                    Hookup hookup = turns.get(i).hookup();
                    steps.add(new TraceView.Step(
                            from,
                            to,
                            hookup.id(),
                            hookup.limit().newtons().doubleValue(),
                            hookup.limit().isAtMost(),
                            hookup.limit().governing(),
                            turns.get(i).assumed(),
                            reading.line().newtons(from(outing, reading))));
                }
            }
        }
    }

    private static int from(Outing outing, OutingReading reading) {
        return LineCalibration.atLeastFrom(reading.line(), outing.start().instrument(), reading.rig());
    }

    private static void tell(List<Told> told, Evidence sink) {
        for (Told one : told) {
            if (one instanceof Told.Hookup hookup) {
                sink.hookup(hookup.number(), hookup.id(), hookup.by());
            } else if (one instanceof Told.Selector selector) {
                sink.input(selector.number(), selector.tick(), selector.position(), 0, 0);
            }
        }
    }

    private static long tick(HookupTrack.Turn turn, List<Told> told, Outing outing) {
        for (Told one : told) {
            if (one instanceof Told.Hookup hookup && hookup.number() == turn.fromNumber()) {
                return hookup.tick();
            }
        }
        return outing.firstTick();
    }

    private static Scale.Axis axis(KnownOuting known) {
        if (known.hasClock()) {
            OutingClock clock = known.clock();
            return tick -> clock.utcMicros(tick).orElseThrow();
        }
        long first = known.outing().firstTick();
        double perTick = 1e6 / known.outing().start().instrument().tickHz();
        return tick -> (long) Math.floor((tick - first) * perTick);
    }
}
