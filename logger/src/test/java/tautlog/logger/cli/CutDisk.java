package tautlog.logger.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import tautlog.logger.cli.WrittenDown.Change;

/**
 * One folder of a disk whose power is cut: what was flushed is there; of what was not, each sector of 512 bytes is there or
 * not, a new length is there or not, and of the changes to the folder itself (names made, changed, removed) only the first
 * few are. Whether flushing a file also makes the names before it last, as on many file systems, is up to chance.
 */
final class CutDisk {
    private static final int SECTOR = 512;
    /** The log's index is rebuilt from the log; it stands in memory that no flush concerns. */
    private static final String LOG_INDEX = "-shm";

    /** What of the unflushed writes is there. */
    private enum Luck {
        NONE(0),
        SOME(0.5),
        ALL(1);

        private final double share;

        Luck(double share) {
            this.share = share;
        }
    }

    private static final class Content {
        private byte[] flushed = new byte[0];
        private final List<Change> pending = new ArrayList<>();

        void flush() {
            for (Change change : pending) {
                flushed = applied(flushed, change);
            }
            pending.clear();
        }

        byte[] left(Luck luck, Random random) {
            byte[] left = flushed;
            for (Change change : pending) {
                for (Change part : sectors(change)) {
                    left = random.nextDouble() < luck.share ? applied(left, part) : left;
                }
            }
            return left;
        }

        private static List<Change> sectors(Change change) {
            if (change.what() != WrittenDown.What.WROTE) {
                return List.of(change);
            }
            List<Change> parts = new ArrayList<>();
            for (int from = 0; from < change.bytes().length; ) {
                int end = Math.min(change.bytes().length, from + SECTOR - (change.where() + from) % SECTOR);
                parts.add(new Change(
                        change.what(),
                        change.nanos(),
                        change.where() + from,
                        change.name(),
                        Arrays.copyOfRange(change.bytes(), from, end)));
                from = end;
            }
            return parts;
        }

        private static byte[] applied(byte[] before, Change change) {
            if (change.what() == WrittenDown.What.CUT_TO) {
                return Arrays.copyOf(before, change.where());
            }
            int end = change.where() + change.bytes().length;
            byte[] after = Arrays.copyOf(before, Math.max(before.length, end));
            System.arraycopy(change.bytes(), 0, after, change.where(), change.bytes().length);
            return after;
        }
    }

    private interface NameChange {
        void apply(Map<String, Content> names);
    }

    private final Random random;
    private final boolean flushMakesNamesLast;
    private final Map<String, Content> lasting = new LinkedHashMap<>();
    private final Map<String, Content> now = new LinkedHashMap<>();
    private final List<NameChange> pending = new ArrayList<>();

    /** @param folder as it was at the start, all of it flushed */
    CutDisk(Path folder, Random random) throws IOException {
        this.random = random;
        flushMakesNamesLast = random.nextBoolean();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Content content = new Content();
                content.flushed = Files.readAllBytes(file);
                lasting.put(file.getFileName().toString(), content);
            }
        }
        now.putAll(lasting);
    }

    /** Power is cut at {@code nanos}: writes what is left of {@code done} into {@code folder}. */
    void cut(WrittenDown done, long nanos, Path folder) throws IOException {
        for (Change change : done.changes()) {
            if (change.nanos() <= nanos) {
                happens(change);
            }
        }
        int named = random.nextInt(pending.size() + 1);
        pending.subList(0, named).forEach(name -> name.apply(lasting));
        Luck luck = Luck.values()[random.nextInt(Luck.values().length)];
        for (Map.Entry<String, Content> file : lasting.entrySet()) {
            if (!file.getKey().endsWith(LOG_INDEX)) {
                Files.write(folder.resolve(file.getKey()), file.getValue().left(luck, random));
            }
        }
    }

    private void happens(Change change) {
        switch (change.what()) {
            case CREATED -> {
                Content made = new Content();
                names(names -> names.put(change.name(), made));
            }
            case RENAMED ->
                names(names -> {
                    Content moved = names.remove(change.name());
                    if (moved != null) {
                        names.put(change.newName(), moved);
                    }
                });
            case REMOVED -> names(names -> names.remove(change.name()));
            case FOLDER_FLUSHED -> namesLast();
            case FLUSHED -> {
                content(change).flush();
                if (flushMakesNamesLast) {
                    namesLast();
                }
            }
            default -> content(change).pending.add(change);
        }
    }

    private void names(NameChange change) {
        change.apply(now);
        pending.add(change);
    }

    private void namesLast() {
        pending.forEach(change -> change.apply(lasting));
        pending.clear();
    }

    private Content content(Change change) {
        return now.getOrDefault(change.name(), new Content()); // removed while it was open: nobody finds it again
    }
}
