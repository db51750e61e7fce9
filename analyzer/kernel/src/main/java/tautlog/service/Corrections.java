package tautlog.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Which of several entries about the same thing holds: entries joined by {@link Entry#replaces} are about the same thing; of those that no
 * other replaces the last written holds, of equals the one with the greatest id. So the order of lines means nothing, and a wrong clock
 * cannot put an entry before its own correction.
 */
final class Corrections {
    private static final Comparator<Entry> WRITTEN =
            Comparator.comparing(Entry::written).thenComparing(Entry::id).thenComparing(EntryLine::of);

    private final Map<String, String> leaders = new HashMap<>();

    private Corrections() {}

    /**
     * Entries about the same thing.
     *
     * @param all each content of each id once
     * @param holding the one that holds; of a conflict (one id, several contents) all contents
     */
    record Group(List<Entry> all, List<Entry> holding) {
        /** What stands below what holds. */
        List<Entry> others() {
            return all.stream().filter(entry -> !holding.contains(entry)).toList();
        }
    }

    static List<Group> groups(List<Entry> entries) {
        Corrections groups = new Corrections();
        Set<String> replaced = new HashSet<>();
        for (Entry entry : entries) {
            entry.replaces().ifPresent(id -> {
                replaced.add(id);
                groups.join(entry.id(), id);
            });
        }
        Map<String, List<Entry>> byGroup = new TreeMap<>();
        for (Entry entry : entries) {
            byGroup.computeIfAbsent(groups.leader(entry.id()), leader -> new ArrayList<>())
                    .add(entry);
        }
        return byGroup.values().stream()
                .map(group -> new Group(group, last(group, replaced)))
                .toList();
    }

    private static List<Entry> last(List<Entry> group, Set<String> replaced) {
        List<Entry> candidates =
                group.stream().filter(entry -> !replaced.contains(entry.id())).toList();
        List<Entry> open = candidates.isEmpty() ? group : candidates; // entries that replace each other in a ring
        String id = open.stream().max(WRITTEN).orElseThrow().id();
        return open.stream().filter(entry -> entry.id().equals(id)).toList();
    }

    private void join(String one, String other) {
        String a = leader(one);
        String b = leader(other);
        if (!a.equals(b)) {
            // the smaller leads, so that the order of lines does not matter
            leaders.put(a.compareTo(b) > 0 ? a : b, a.compareTo(b) > 0 ? b : a);
        }
    }

    private String leader(String id) {
        String at = id;
        while (leaders.containsKey(at)) {
            at = leaders.get(at);
        }
        return at;
    }
}
