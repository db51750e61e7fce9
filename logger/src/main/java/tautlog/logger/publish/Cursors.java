package tautlog.logger.publish;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.recording.SaidMark;

/** Where one outlet's cursor stands: in memory, and in {@link StateFile} when the disk takes it. */
final class Cursors implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Cursors.class);

    private final Path folder;
    private final String outlet;
    private final Map<String, Map<Integer, SaidMark>> moved = new HashMap<>();
    private @Nullable StateFile file;
    private boolean isTold;
    private final AtomicLong refused = new AtomicLong();

    Cursors(Path folder, String outlet) {
        this.folder = folder;
        this.outlet = outlet;
    }

    private interface Use<T> {
        T of(StateFile file) throws SQLException;
    }

    private <T> T use(Use<T> use, T otherwise) {
        try {
            StateFile open = file;
            if (open == null) {
                open = StateFile.open(folder, outlet);
                file = open;
                refused.accumulateAndGet(open.refused(), Math::max);
            }
            T result = use.of(open);
            isTold = false;
            return result;
        } catch (SQLException | IOException refusal) {
            StateFile open = file;
            close();
            if (open != null && StateFile.isDamage(refusal)) {
                putAside(open);
            }
            if (!isTold) {
                LOG.warn(
                        "state.db cannot be used, publishing goes on and will repeat itself after the next start: {}",
                        refusal.getMessage());
                isTold = true;
            }
            return otherwise;
        }
    }

    private static void putAside(StateFile damaged) {
        try {
            damaged.putAside();
        } catch (IOException stays) {
            LOG.debug("a damaged state.db stays: {}", stays.getMessage());
        }
    }

    /** Where the cursor stands in an outing. */
    SaidMark at(String recording, int outing) {
        return moved.computeIfAbsent(recording, id -> new HashMap<>(use(open -> open.cursors(id), Map.of())))
                .getOrDefault(outing, SaidMark.NONE);
    }

    void move(String recording, int outing, SaidMark to) {
        at(recording, outing);
        moved.computeIfAbsent(recording, id -> new HashMap<>()).put(outing, to);
        use(
                open -> {
                    open.move(recording, outing, to);
                    return to;
                },
                to);
    }

    /** Nothing more is asked of a recording for now. */
    void forget(String recording) {
        if (!isTold) {
            moved.remove(recording); // all of it stands in the file
        }
    }

    /** @return how many were set aside before, ever; empty if it was known already */
    OptionalLong setAside(Item item, String why) {
        boolean isNew = use(open -> open.setAside(item.position(), item.toString(), why), true);
        return isNew ? OptionalLong.of(refused.getAndIncrement()) : OptionalLong.empty();
    }

    /** How many were set aside, ever. */
    long refused() {
        return refused.get();
    }

    @Override
    public void close() {
        StateFile open = file;
        file = null;
        if (open != null) {
            try {
                open.close();
            } catch (SQLException gone) {
                LOG.debug("closing state.db: {}", gone.getMessage());
            }
        }
    }
}
