package tautlog.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Random ledgers of two laptops: torn at every byte, merged in every way, they say what a slow obvious reading says. */
class LedgerMergeTest {
    private static final Instant START = Instant.parse("2026-05-04T07:00:00Z");
    private static final Instant NOW = Instant.parse("2027-01-01T00:00:00Z");

    private static Ledger read(byte[] bytes) {
        return Ledger.read("ledger.jsonl", bytes, ZoneOffset.UTC, NOW);
    }

    private static List<Entry> random(Random random, String laptop, List<Entry> known) {
        List<Entry> entries = new ArrayList<>();
        int n = 1 + random.nextInt(3);
        for (int i = 0; i < n; i++) {
            List<Entry> all = Stream.concat(known.stream(), entries.stream()).toList();
            boolean replaces = !all.isEmpty() && random.nextInt(3) == 0;
            Optional<String> replaced =
                    replaces ? Optional.of(all.get(random.nextInt(all.size())).id()) : Optional.empty();
            Instant at = START.plusSeconds(random.nextInt(1_000_000));
            Act act = replaces && random.nextBoolean()
                    ? new Act.Withdrawn()
                    : random.nextBoolean()
                            ? new Act.Done("täsk \"{\\\"id\\\":")
                            : new Act.OutOfService(new GearPiece("choker", Optional.empty()));
            entries.add(new Entry(
                    laptop + i,
                    at,
                    START.plusSeconds(random.nextInt(9)),
                    Optional.empty(),
                    Optional.empty(),
                    random.nextBoolean() ? Optional.of("nöte {\"id\":\"x\"}") : Optional.empty(),
                    replaced,
                    act));
        }
        return entries;
    }

    private static byte[] file(List<Entry> entries) {
        StringBuilder text = new StringBuilder();
        entries.forEach(entry -> text.append(EntryLine.of(entry)).append('\n'));
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] concat(byte[] one, byte[] other) {
        ByteArrayOutputStream both = new ByteArrayOutputStream();
        both.writeBytes(one);
        both.writeBytes(other);
        return both.toByteArray();
    }

    private static byte[] shuffled(byte[] file, Random random) {
        List<String> lines = new ArrayList<>(List.of(new String(file, StandardCharsets.UTF_8).split("\n", -1)));
        Collections.shuffle(lines, random);
        return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    }

    /** Replaces again and again whatever is replaced, until nothing changes: slow and obvious. */
    private static List<Entry> obvious(List<Entry> all) {
        List<List<Entry>> groups = new ArrayList<>();
        for (Entry entry : all) {
            groups.add(new ArrayList<>(List.of(entry)));
        }
        boolean joined = true;
        while (joined) {
            joined = false;
            for (int i = 0; i < groups.size() && !joined; i++) {
                for (int j = 0; j < groups.size() && !joined; j++) {
                    if (i != j && touches(groups.get(i), groups.get(j))) {
                        groups.get(i).addAll(groups.get(j));
                        groups.remove(j);
                        joined = true;
                    }
                }
            }
        }
        List<Entry> holding = new ArrayList<>();
        for (List<Entry> group : groups) {
            group.stream()
                    .filter(entry -> group.stream().noneMatch(other -> replaces(other, entry.id())))
                    .max(java.util.Comparator.comparing(Entry::written).thenComparing(Entry::id))
                    .filter(entry -> !(entry.act() instanceof Act.Withdrawn))
                    .ifPresent(holding::add);
        }
        holding.sort(java.util.Comparator.comparing(Entry::at).thenComparing(Entry::id));
        return holding;
    }

    private static boolean touches(List<Entry> one, List<Entry> other) {
        return one.stream()
                .anyMatch(a -> other.stream()
                        .anyMatch(b -> replaces(a, b.id())
                                || replaces(b, a.id())
                                || (a.replaces().isPresent() && a.replaces().equals(b.replaces()))));
    }

    private static boolean replaces(Entry entry, String id) {
        return entry.replaces().equals(Optional.of(id));
    }

    @Property(tries = 10)
    void saysTheSameInWhateverOrderTwoLaptopsAreMergedAndWhereverOneWasTorn(@ForAll long seed) {
        Random random = new Random(seed);
        List<Entry> shared = random(random, "s", List.of());
        List<Entry> mine = random(random, "m", shared);
        List<Entry> theirs = random(random, "t", shared);
        byte[] one = concat(file(shared), file(mine));
        byte[] other = concat(file(shared), file(theirs));

        for (int cut = 0; cut <= one.length; cut++) {
            byte[] torn = Arrays.copyOf(one, cut);
            List<Entry> whole = wholeLines(torn, shared, mine);
            List<Entry> all = Stream.concat(Stream.concat(whole.stream(), shared.stream()), theirs.stream())
                    .distinct()
                    .toList();
            List<Entry> expected = obvious(all);

            assertEquals(expected, read(concat(torn, other)).entries(), "torn file first, cut at " + cut);
            assertEquals(expected, read(concat(other, torn)).entries(), "torn file last, cut at " + cut);
        }
        byte[] both = concat(one, other);
        Ledger merged = read(both);
        for (int i = 0; i < 5; i++) {
            assertEquals(merged.entries(), read(shuffled(both, random)).entries());
        }
        List<Complaint> others = merged.complaints().stream()
                .filter(complaint ->
                        !complaint.found().matches("it corrects what \".*\" took back: it counts all the same"))
                .toList();
        assertTrue(others.isEmpty(), others::toString);
    }

    /** A cut before a line's feed leaves a line that is whole. */
    private static List<Entry> wholeLines(byte[] torn, List<Entry> shared, List<Entry> mine) {
        List<Entry> written = Stream.concat(shared.stream(), mine.stream()).toList();
        List<Entry> whole = new ArrayList<>();
        int length = 0;
        for (Entry entry : written) {
            int line = EntryLine.of(entry).getBytes(StandardCharsets.UTF_8).length;
            if (length + line <= torn.length) {
                whole.add(entry);
            }
            length += line + 1;
        }
        return whole;
    }
}
