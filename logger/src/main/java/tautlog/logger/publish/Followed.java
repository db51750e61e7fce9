package tautlog.logger.publish;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.config.ConfigException;
import tautlog.recording.OutingTrail;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingTrail;
import tautlog.recording.Said;
import tautlog.recording.SaidMark;

/** A recording that is not published to its end yet. Opens it for each look and lets go of it at once. */
final class Followed {
    private static final Logger LOG = LoggerFactory.getLogger(Followed.class);

    private final String id;
    private final Cursors cursors;
    private final RecordingTrail trail = new RecordingTrail();
    private final Map<Integer, ItemMaker> makers = new HashMap<>();
    private final Set<Integer> passedOver = new HashSet<>();
    private final Set<Integer> over = new HashSet<>();
    private Path file;
    private long waiting;

    Followed(Path file, String id, Cursors cursors) {
        this.file = file;
        this.id = id;
        this.cursors = cursors;
    }

    /** It may have got another name. */
    void isNow(Path name) {
        file = name;
    }

    Path file() {
        return file;
    }

    String id() {
        return id;
    }

    /** How many outings will never be published. */
    int passedOver() {
        return passedOver.size();
    }

    /** Seconds and findings behind the cursors, as of the last look. */
    long waiting() {
        return waiting;
    }

    /** Whether every outing is closed and was published to its end. */
    boolean isOver() {
        return trail.outings().stream().allMatch(outing -> over.contains(outing.index()));
    }

    /** The next to be published, at most {@code most} seconds and as many findings; empty when there is nothing now. */
    Optional<Portion> next(int most) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            recording.follow(trail);
            count(recording);
            for (OutingTrail outing : trail.outings()) {
                Optional<Portion> portion =
                        over.contains(outing.index()) ? Optional.empty() : next(recording, outing, most);
                if (portion.isPresent()) {
                    return portion;
                }
            }
        }
        return Optional.empty();
    }

    /** Looks again how much is waiting; the answer is that of {@link #waiting}. */
    long recount() throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            recording.follow(trail);
            count(recording);
        }
        return waiting;
    }

    private void count(Recording recording) throws RecordingException {
        waiting = 0;
        for (OutingTrail outing : trail.outings()) {
            if (!over.contains(outing.index())) {
                waiting += recording.saidBehind(outing, cursors.at(id, outing.index()));
            }
        }
    }

    private Optional<Portion> next(Recording recording, OutingTrail outing, int most) throws RecordingException {
        if (outing.start().isEmpty() || (outing.closed() && !outing.hasClock())) {
            passOver(outing, "it has no start that can be read, or no clock was ever known");
            return Optional.empty();
        }
        if (!outing.hasClock()) {
            return Optional.empty(); // waits for one
        }
        SaidMark mark = cursors.at(id, outing.index());
        Optional<ItemMaker> maker = maker(recording, outing, mark);
        if (maker.isEmpty()) {
            return Optional.empty();
        }
        boolean closed = outing.closed();
        Said said = recording.said(trail, outing, mark, most);
        if (said.seconds().isEmpty() && said.findings().isEmpty()) {
            if (closed) {
                over.add(outing.index());
                makers.remove(outing.index());
            }
            return Optional.empty();
        }
        return Optional.of(new Portion(id, outing.index(), maker.get().items(said), behind(said, mark)));
    }

    private static SaidMark behind(Said said, SaidMark mark) {
        int seconds = said.seconds().size();
        int findings = said.findings().size();
        return new SaidMark(
                seconds == 0
                        ? mark.second()
                        : said.seconds().get(seconds - 1).second().index(),
                findings == 0
                        ? mark.finding()
                        : said.findings().get(findings - 1).id());
    }

    private Optional<ItemMaker> maker(Recording recording, OutingTrail outing, SaidMark mark)
            throws RecordingException {
        ItemMaker known = makers.get(outing.index());
        if (known != null) {
            return Optional.of(known);
        }
        try {
            ItemMaker made = ItemMaker.of(id, outing, outing.start().orElseThrow());
            made.countAgain(recording.findingsUpTo(outing, mark));
            makers.put(outing.index(), made);
            return Optional.of(made);
        } catch (ConfigException unreadable) {
            passOver(outing, String.valueOf(unreadable.getMessage()));
            return Optional.empty();
        }
    }

    private void passOver(OutingTrail outing, String why) {
        over.add(outing.index());
        passedOver.add(outing.index());
        LOG.warn("not published: outing {} of {}: {}", outing.index(), file.getFileName(), why);
    }

    /** The link that its chain ends with for good. */
    String sealedLink() throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.sealedLink();
        }
    }
}
