package tautlog.logger.publish;

import com.google.gson.JsonObject;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.publish.Announcement.Subject;
import tautlog.logger.publish.Outlet.Announced;
import tautlog.logger.publish.PublisherState.Word;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.recording.RecordingException;

/**
 * One outlet's thread: reads the next portion from the recordings, has it delivered, moves the cursor, and so on for ever.
 *
 * <p>Whatever goes wrong here, also what no program should survive, is said, waited out and tried again: recording never depends
 * on it. It begins after the first commit, so that it costs the start nothing.
 */
public final class Publisher implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(Publisher.class);
    private static final Optional<String> STUMBLED =
            Optional.of("a fault in this program, which could not be told; perhaps there is no memory left");

    private final Plan plan;
    private final Supplier<Outlet> maker;
    private final Cursors cursors;
    private final Shelf shelf;
    private final BackOff backOff;
    private @Nullable Outlet outlet;
    private @Nullable Portion pending;
    private long lastPollNanos;
    private long lastScanNanos;
    private long lastHeartbeatNanos;
    private LocalDate linkDay = LocalDate.MIN;
    private long troubles;
    private boolean hasStumbled;
    private volatile boolean stopping;

    private volatile Word word = Word.WAITING;
    private volatile Instant since;
    private volatile Optional<String> why = Optional.empty();
    private volatile Optional<String> lastPosition = Optional.empty();
    private volatile Optional<Instant> oldestWaiting = Optional.empty();
    private volatile boolean hasLooked;
    private volatile long lagItems;
    private volatile long passedOver;
    private volatile long unreadable;

    /**
     * What a publisher is told.
     *
     * @param name of the outlet, in messages and in {@code state.db}
     * @param most seconds, and most findings, delivered together
     * @param signal of commits
     * @param status what the logger is doing, as JSON
     */
    public record Plan(
            String name,
            RecordingFiles files,
            java.nio.file.Path folder,
            int most,
            CommitSignal signal,
            Patience patience,
            InstantSource clock,
            Supplier<JsonObject> status) {}

    /** @param maker makes the outlet; called on this thread, and only after the first commit */
    public Publisher(Plan plan, Supplier<Outlet> maker) {
        this.plan = plan;
        this.maker = maker;
        cursors = new Cursors(plan.folder(), plan.name());
        shelf = new Shelf(plan.files(), cursors);
        backOff = new BackOff(plan.patience(), new Random());
        since = plan.clock().instant();
    }

    /** Any thread. */
    public PublisherState state() {
        return new PublisherState(
                word,
                Optional.of(since),
                why,
                lagItems,
                lagSeconds(),
                lastPosition,
                cursors.refused(),
                passedOver,
                unreadable);
    }

    /** Nothing waits only where all was looked into; of what waits for a clock nobody knows how old it is. */
    private OptionalDouble lagSeconds() {
        Optional<Instant> oldest = oldestWaiting;
        if (oldest.isPresent()) {
            return OptionalDouble.of(
                    Math.max(0, (plan.clock().millis() - oldest.get().toEpochMilli()) / 1e3));
        }
        return hasLooked && lagItems == 0 && unreadable == 0 ? OptionalDouble.of(0) : OptionalDouble.empty();
    }

    /** Asks it to end; interrupt its thread, too. */
    public void stop() {
        stopping = true;
    }

    @Override
    public void run() {
        try {
            while (!stopping) {
                turnOrStumble();
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } finally {
            letGo();
            cursors.close();
        }
    }

    /** Where even saying what went wrong goes wrong, as without memory, nothing is made before a wait. */
    private void turnOrStumble() throws InterruptedException {
        try {
            if (hasStumbled) {
                Thread.sleep(plan.patience().greatestBackOff());
                startAfresh();
                hasStumbled = false;
            }
            plan.signal().awaitMore(0, 0);
            turn();
        } catch (InterruptedException stopped) {
            throw stopped;
        } catch (Throwable again) {
            word = Word.AWAY;
            why = STUMBLED;
            hasStumbled = true;
        }
    }

    private void startAfresh() {
        pending = null;
        shelf.clear(); // half-read as it may be
        lastScanNanos = 0;
        letGo();
    }

    /** One look and what follows from it; waits as it should before the next. */
    private void turn() throws InterruptedException {
        long seen = plan.signal().commits();
        try {
            scanIfDue();
            publishAll();
            beat();
            waitForMore(seen);
        } catch (Away away) {
            trouble(Word.AWAY, String.valueOf(away.getMessage()), away.waitMillis());
        } catch (RecordingException unreadable) {
            trouble(word, String.valueOf(unreadable.getMessage()), 0);
        } catch (InterruptedException stopped) {
            throw stopped;
        } catch (Throwable bug) { // OutOfMemoryError and StackOverflowError included: the recording must not notice
            if (stopping) {
                return;
            }
            startAfresh();
            trouble(Word.AWAY, "a fault in this program: " + bug, 0);
        }
    }

    private void scanIfDue() throws RecordingException {
        long now = System.nanoTime();
        if (lastScanNanos == 0 || now - lastScanNanos >= plan.patience().scan() * 1_000_000) {
            shelf.scan();
            lastScanNanos = now;
        }
    }

    private void publishAll() throws Away, RecordingException, InterruptedException {
        lastPollNanos = System.nanoTime();
        if (pending != null) {
            recount(); // it was away: more is waiting by now
        }
        for (Followed followed : shelf.open()) {
            while (!stopping && publishNext(followed)) {
                scanIfDue(); // catching up may take days
                beat();
            }
        }
        count();
        oldestWaiting = Optional.empty();
        hasLooked = true;
    }

    private void recount() {
        for (Followed followed : shelf.open()) {
            try {
                plan.files().door().read(followed::recount);
            } catch (RecordingException refusal) {
                LOG.debug("not counted: {}", refusal.getMessage()); // publishing it says why
            }
        }
        count();
    }

    /** False when nothing is left of it, or it cannot be read, for now. */
    private boolean publishNext(Followed followed) throws Away, InterruptedException {
        try {
            Optional<Portion> portion = portion(followed);
            if (portion.isPresent()) {
                deliver(portion.get());
                pending = null;
                return true;
            }
            if (followed.isOver()) {
                sayLink(followed);
                shelf.close(followed);
            }
            shelf.wasRead(followed);
        } catch (RecordingException refusal) {
            if (shelf.lost(followed, refusal)) {
                lastScanNanos = 0; // it may have been renamed
            }
        }
        return false;
    }

    private Optional<Portion> portion(Followed followed) throws RecordingException {
        Portion known = pending;
        if (known != null) {
            return Optional.of(known);
        }
        Optional<Portion> next = plan.files().door().read(() -> followed.next(plan.most()));
        count();
        next.ifPresent(portion -> {
            pending = portion;
            oldestWaiting = portion.oldest().or(() -> oldestWaiting);
        });
        return next;
    }

    private void deliver(Portion portion) throws Away, InterruptedException {
        List<Item> items = portion.items();
        if (!items.isEmpty()) {
            deliver(items);
            lastPosition = Optional.of(items.get(items.size() - 1).position());
        }
        cursors.move(portion.recording(), portion.outing(), portion.then());
        connected();
    }

    /** Halves what is refused, until what is refused stands alone and is set aside. */
    private void deliver(List<Item> items) throws Away, InterruptedException {
        try {
            outlet().deliver(items);
        } catch (Refused refused) {
            if (items.size() == 1) {
                setAside(items.get(0), String.valueOf(refused.getMessage()));
                return;
            }
            int half = items.size() / 2;
            deliver(items.subList(0, half));
            deliver(items.subList(half, items.size()));
        }
    }

    /** A server that refuses all it gets must not fill the log: the first is told, the second, the fourth and so on. */
    private void setAside(Item item, String why) {
        OptionalLong before = cursors.setAside(item, why);
        if (before.isPresent() && Long.bitCount(before.getAsLong() + 1) == 1) {
            LOG.warn(
                    "{} refuses {}: {}; set aside in state.db, refused={}",
                    plan.name(),
                    item.position(),
                    why,
                    before.getAsLong() + 1);
        }
    }

    private Outlet outlet() {
        Outlet known = outlet;
        if (known == null) {
            known = maker.get();
            outlet = known;
        }
        return known;
    }

    private void count() {
        lagItems = shelf.waiting();
        passedOver = shelf.passedOver();
        unreadable = shelf.unreadable();
    }

    /** The status at intervals; once a UTC day the link that stands in the newest recording. */
    private void beat() throws Away, RecordingException, InterruptedException {
        long now = System.nanoTime();
        if (lastHeartbeatNanos != 0
                && now - lastHeartbeatNanos < plan.patience().heartbeat() * 1_000_000) {
            return;
        }
        Announced told = outlet().announce(
                        new Announcement(Subject.STATUS, plan.status().get().toString()));
        lastHeartbeatNanos = now;
        if (told == Announced.ACKNOWLEDGED) {
            connected();
        }
        List<Followed> open = shelf.open();
        LocalDate today = LocalDate.ofInstant(plan.clock().instant(), ZoneOffset.UTC);
        if (!open.isEmpty() && !today.equals(linkDay)) {
            sayLink(open.get(open.size() - 1));
        }
    }

    private void sayLink(Followed followed) throws Away, RecordingException, InterruptedException {
        String link = plan.files().door().read(followed::sealedLink);
        Instant now = plan.clock().instant();
        Fields fields = new Fields()
                .text("file", String.valueOf(followed.file().getFileName()))
                .text("recording", followed.id())
                .text("at", now.toString())
                .text("last_link", link);
        outlet().announce(new Announcement(Subject.LINK, fields.json().toString()));
        linkDay = LocalDate.ofInstant(now, ZoneOffset.UTC);
    }

    private void waitForMore(long seen) throws InterruptedException {
        long untilBeat = plan.patience().heartbeat();
        plan.signal().awaitMore(seen, untilBeat);
        long since = (System.nanoTime() - lastPollNanos) / 1_000_000;
        if (since < plan.patience().poll()) {
            Thread.sleep(plan.patience().poll() - since);
        }
    }

    private void connected() {
        if (word != Word.CONNECTED) {
            LOG.info("{} connected after_tries={}", plan.name(), troubles + 1);
            word = Word.CONNECTED;
            since = plan.clock().instant();
            why = Optional.empty();
        }
        troubles = 0;
        backOff.reset();
    }

    private void trouble(Word now, String words, long asked) throws InterruptedException {
        if (stopping) {
            return; // whoever was interrupted by it is not away
        }
        if (troubles++ == 0) {
            LOG.warn("{} away, tried again for ever; what is recorded waits in the recording: {}", plan.name(), words);
        }
        if (word != now) {
            word = now;
            since = plan.clock().instant();
        }
        why = Optional.of(words);
        Thread.sleep(backOff.next(asked));
    }

    private void letGo() {
        Outlet open = outlet;
        outlet = null;
        if (open != null) {
            try {
                open.close();
            } catch (RuntimeException gone) {
                LOG.debug("closing {}: {}", plan.name(), String.valueOf(gone));
            }
        }
    }
}
