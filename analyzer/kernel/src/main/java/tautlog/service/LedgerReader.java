package tautlog.service;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Puts the lines of a ledger together; see {@link Ledger}. Not thread-safe. */
final class LedgerReader {
    /** Where an entry stands. */
    private record Placed(int line, Entry entry) {}

    private final String file;
    private final Instant now;
    private final List<Complaint> complaints = new ArrayList<>();
    private final List<Placed> placed = new ArrayList<>();

    LedgerReader(String file, Instant now) {
        this.file = file;
        this.now = now;
    }

    void take(LedgerLines.Part part, ZoneId zone) {
        if (part.object().isEmpty()) {
            ignored(
                    part.number(),
                    part.isTorn()
                            ? "this line is torn: the program or the power went while it was written"
                            : "this is no entry: " + shown(part.text()),
                    "Nothing of it counts. Write { \"id\": …, \"kind\": …, … } on one line, or put # before it.");
            return;
        }
        EntryReader.Said said = EntryReader.read(part.object().get(), zone);
        if (!said.problems().isEmpty()) {
            ignored(
                    part.number(),
                    String.join("; ", said.problems()),
                    "Nothing of this line counts until that is mended.");
        }
        said.remarks().forEach(remark -> remark(part.number(), withoutStop(remark), ""));
        said.entry().ifPresent(entry -> placed.add(new Placed(part.number(), entry)));
    }

    Ledger ledger() {
        List<Placed> once = once();
        noteReplacements(once);
        List<Entry> holding =
                Corrections.holding(once.stream().map(Placed::entry).toList());
        Map<String, Long> contents = holding.stream().collect(Collectors.groupingBy(Entry::id, Collectors.counting()));
        List<Entry> entries = holding.stream()
                .filter(entry -> !(entry.act() instanceof Act.Withdrawn))
                .filter(entry -> contents.getOrDefault(entry.id(), 0L) == 1 || doubted(entry, once))
                .filter(entry -> !entry.at().isAfter(now) || ahead(entry, once))
                .sorted(Comparator.comparing(Entry::at).thenComparing(Entry::id).thenComparing(EntryLine::of))
                .toList();
        complaints.sort(Comparator.comparingInt(Complaint::line));
        Set<String> ids = once.stream().map(one -> one.entry().id()).collect(Collectors.toSet());
        return new Ledger(entries, ids, complaints);
    }

    /** Each content of each id once, where it stands first. */
    private List<Placed> once() {
        Map<String, List<Placed>> byId = new LinkedHashMap<>();
        for (Placed one : placed) {
            List<Placed> same = byId.computeIfAbsent(one.entry().id(), id -> new ArrayList<>());
            if (same.stream().noneMatch(other -> other.entry().equals(one.entry()))) {
                same.add(one);
            }
        }
        return byId.values().stream().flatMap(List::stream).toList();
    }

    private void noteReplacements(List<Placed> once) {
        Set<String> ids = new HashSet<>();
        once.forEach(one -> ids.add(one.entry().id()));
        for (Placed one : once) {
            one.entry()
                    .replaces()
                    .filter(id -> !ids.contains(id))
                    .ifPresent(id -> remark(
                            one.line(),
                            "it replaces \"" + shown(id) + "\", which is not in this ledger",
                            "Is that in the ledger of another computer? Put the two files together."));
        }
    }

    /** An id with several contents: told with the line of this one; whether it counts all the same. */
    private boolean doubted(Entry entry, List<Placed> once) {
        boolean counts = !entry.act().reassures();
        remarkAt(
                entry,
                once,
                "\"" + shown(entry.id()) + "\" stands here with other content than on line " + otherLines(entry, once)
                        + "; " + (counts ? "both count" : "neither counts"),
                "Which is right? Give the other an id of its own, or put # before it.");
        return counts;
    }

    private static String otherLines(Entry entry, List<Placed> once) {
        return once.stream()
                .filter(one ->
                        one.entry().id().equals(entry.id()) && !one.entry().equals(entry))
                .map(one -> Integer.toString(one.line()))
                .collect(Collectors.joining(", "));
    }

    /** An entry of the future: told; whether it counts all the same. */
    private boolean ahead(Entry entry, List<Placed> once) {
        boolean counts = !entry.act().reassures();
        remarkAt(
                entry,
                once,
                "its time " + entry.at() + " is still to come"
                        + (counts ? "; it counts all the same" : "; it does not count until then"),
                "Is the clock of one computer wrong? Correct it with --replaces " + shown(entry.id()) + ".");
        return counts;
    }

    private void remarkAt(Entry entry, List<Placed> once, String found, String advice) {
        int line = once.stream()
                .filter(one -> one.entry().equals(entry))
                .mapToInt(Placed::line)
                .min()
                .orElseThrow();
        remark(line, found, advice);
    }

    private void ignored(int line, String found, String advice) {
        complaints.add(new Complaint(Complaint.Weight.IGNORED, file, line, found, advice));
    }

    private void remark(int line, String found, String advice) {
        complaints.add(new Complaint(Complaint.Weight.REMARK, file, line, found, advice));
    }

    private static String withoutStop(String sentence) {
        return sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
    }

    private static String shown(String text) {
        String line = text.replaceAll("\\p{Cntrl}", "?");
        return line.length() > 60 ? line.substring(0, 60) + "…" : line;
    }
}
