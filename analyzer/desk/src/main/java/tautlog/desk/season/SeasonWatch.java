package tautlog.desk.season;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.desk.pyramid.OutingPyramid;
import tautlog.quantity.ForceUnit;
import tautlog.recording.RecordingException;

/**
 * Keeps what is known of a folder up to date, in one thread of its own: looks each second which recordings changed, reads on in them, and lets
 * the analysis say what it finds, the newest day first. A request never waits for that: it gets what is known, and what it asks for comes
 * next.
 */
public final class SeasonWatch implements AutoCloseable {
    /** Chosen: most pieces of work take less, and nobody at a terminal waits longer to leave. */
    private static final long PATIENCE_MILLIS = 2_000;

    private static final long LOOK_MILLIS = 1_000;
    /** Chosen: a day that goes on is analysed anew at most so often, and never more than a fifth of the time. */
    private static final Duration ANEW = Duration.ofSeconds(10);

    private static final int ASKED_AT_ONCE = 32;

    private final Path folder;
    private final Offer offer;
    private final DayWork work;
    private final FolderLook look;
    private final Pyramids pyramids;
    private final DayIndex days;
    private final Thread thread;
    private final Set<Asked> asked = new LinkedHashSet<>();
    private final Map<Asked, Long> notBefore = new HashMap<>();
    private volatile KnownSeason season;
    private volatile boolean looked;
    private volatile boolean closed;
    private volatile String trouble = "";

    /** A day to be worked out; all days where it is empty. */
    private record Asked(Optional<DayKey> day, WhatIf whatIf) {}

    /**
     * Begins to look.
     *
     * @param unit of forces; empty for the rig's
     * @param index where indexes are kept; empty for nowhere
     */
    public SeasonWatch(Path folder, ZoneId zone, Optional<ForceUnit> unit, Offer offer, Optional<Path> index) {
        this.folder = folder;
        this.offer = offer;
        work = new DayWork(folder, zone, unit);
        look = new FolderLook(folder, zone);
        pyramids = new Pyramids(index);
        days = new DayIndex(index);
        season = KnownSeason.nothing(zone);
        thread = new Thread(this::run, "season watch");
        thread.setDaemon(true);
        thread.start();
    }

    /** What is known now. */
    public KnownSeason season() {
        return season;
    }

    /** The unit that forces are shown in; empty for the rig's. */
    public Optional<ForceUnit> unit() {
        return work.unit();
    }

    public Offer offer() {
        return offer;
    }

    public DayIndex days() {
        return days;
    }

    public Optional<OutingPyramid> pyramid(KnownOuting outing) {
        return pyramids.of(outing);
    }

    public Progress progress() {
        KnownSeason now = season;
        Set<DayKey> all = now.days().keySet();
        return new Progress(
                looked,
                now.outings().size(),
                (int) now.outings().stream()
                        .filter(one -> pyramids.of(one).isPresent())
                        .count(),
                all.size(),
                (int) all.stream()
                        .filter(day -> days.summary(day, WhatIf.NOTHING).isPresent())
                        .count(),
                trouble);
    }

    /** Somebody looks at this day, or at the whole season: it comes next. */
    public void ask(Optional<DayKey> day, WhatIf whatIf) {
        synchronized (asked) {
            Asked one = new Asked(day, whatIf);
            asked.remove(one);
            asked.add(one);
            if (asked.size() > ASKED_AT_ONCE) {
                asked.remove(asked.iterator().next());
            }
            asked.notifyAll();
        }
    }

    private void run() {
        while (!closed) {
            boolean goesOn = false;
            try {
                goesOn = step();
            } catch (IOException e) {
                trouble = WithoutFolder.text(folder, String.valueOf(e.getMessage()));
            } catch (RuntimeException | Error bug) {
                trouble = "This is a bug in tautlog, please report it: " + bug;
            }
            rest(goesOn);
        }
    }

    private void rest(boolean goesOn) {
        synchronized (asked) {
            try {
                if (!goesOn && !closed) {
                    asked.wait(LOOK_MILLIS);
                }
            } catch (InterruptedException e) {
                closed = true;
            }
        }
    }

    /** One look, and one piece of work; whether more waits. */
    private boolean step() throws IOException {
        season = look.look(season);
        looked = true;
        String met = "";
        boolean read = false;
        try {
            read = readOn();
        } catch (RecordingException e) {
            met = WithoutFolder.text(folder, String.valueOf(e.getMessage()));
        }
        boolean worked = workOn();
        trouble = met;
        return read || worked;
    }

    private boolean readOn() throws RecordingException {
        Map<String, List<KnownOuting>> stale = season.outings().stream()
                .filter(one -> !pyramids.isCurrent(one))
                .collect(Collectors.groupingBy(KnownOuting::recordingId));
        if (stale.isEmpty()) {
            return false;
        }
        String newest = stale.values().stream()
                .map(list -> list.get(list.size() - 1))
                .reduce((one, other) -> later(one, other) ? one : other)
                .orElseThrow()
                .recordingId();
        pyramids.follow(season.outings().stream()
                .filter(one -> one.recordingId().equals(newest))
                .toList());
        return stale.size() > 1;
    }

    private static boolean later(KnownOuting one, KnownOuting other) {
        return one.end().isPresent()
                && (other.end().isEmpty() || one.end().get().isAfter(other.end().get()));
    }

    private boolean workOn() throws IOException {
        Map<DayKey, List<KnownOuting>> all = season.days();
        for (Asked next : inOrder(all)) {
            DayKey day = next.day().orElseThrow();
            List<KnownOuting> outings = all.getOrDefault(day, List.of());
            if (!outings.isEmpty() && isDue(next, outings)) {
                long begun = System.nanoTime();
                days.put(
                        day,
                        next.whatIf(),
                        work.record(day, outings, offer.question(next.whatIf()), stamp(next, outings)));
                long took = System.nanoTime() - begun;
                notBefore.put(next, System.nanoTime() + Math.max(ANEW.toNanos(), 5 * took));
                return true;
            }
        }
        return false;
    }

    private boolean isDue(Asked next, List<KnownOuting> outings) {
        if (days.isCurrent(next.day().orElseThrow(), next.whatIf(), stamp(next, outings))) {
            return false;
        }
        Long earliest = notBefore.get(next);
        return earliest == null || System.nanoTime() - earliest >= 0;
    }

    private String stamp(Asked next, List<KnownOuting> outings) {
        List<String> texts = new ArrayList<>(List.of(work.shape(), next.whatIf().isNothing() ? "" : offer.text()));
        outings.forEach(outing -> texts.add(season.stamp(outing)));
        return Fingerprint.of(texts.toArray(new String[0]));
    }

    /** Days that somebody looks at, all days as recorded, the newest first, then all days of what somebody asks "what if" of. */
    private List<Asked> inOrder(Map<DayKey, List<KnownOuting>> all) {
        List<DayKey> newestFirst = new ArrayList<>(all.keySet());
        Collections.reverse(newestFirst);
        List<Asked> order = new ArrayList<>();
        List<Asked> seasons = new ArrayList<>();
        synchronized (asked) {
            for (Asked one : asked) {
                (one.day().isPresent() ? order : seasons).add(one);
            }
        }
        Collections.reverse(order);
        newestFirst.forEach(day -> order.add(new Asked(Optional.of(day), WhatIf.NOTHING)));
        seasons.forEach(one -> newestFirst.forEach(day -> order.add(new Asked(Optional.of(day), one.whatIf()))));
        return order;
    }

    /** Ends the thread after the piece of work that it is at; waits for that, 2 s at most. */
    @Override
    public void close() {
        closed = true;
        synchronized (asked) {
            asked.notifyAll();
        }
        try {
            thread.join(PATIENCE_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
