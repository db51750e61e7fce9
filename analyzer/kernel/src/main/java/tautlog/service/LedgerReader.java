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
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Puts the lines of a ledger together; see {@link Ledger}. Not thread-safe. */
final class LedgerReader {
    /** Where an entry stands. */
    private record Placed(int line, Entry entry) {}

    private final String file;
    private final Instant now;
    private final List<Complaint> complaints = new ArrayList<>();
    private final List<Placed> placed = new ArrayList<>();
    private final Map<String, String> withdrawn = new TreeMap<>();

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
        List<Entry> holding = holding(once);
        Map<String, Long> contents = holding.stream().collect(Collectors.groupingBy(Entry::id, Collectors.counting()));
        List<Entry> entries = holding.stream()
                .filter(entry -> contents.getOrDefault(entry.id(), 0L) == 1 || doubted(entry, once))
                .filter(entry -> !entry.at().isAfter(now) || ahead(entry, once))
                .sorted(Comparator.comparing(Entry::at).thenComparing(Entry::id).thenComparing(EntryLine::of))
                .toList();
        entries.forEach(entry -> noteNameless(entry, once));
        complaints.sort(Comparator.comparingInt(Complaint::line));
        Set<String> ids = once.stream().map(one -> one.entry().id()).collect(Collectors.toSet());
        return new Ledger(entries, ids, withdrawn, complaints);
    }

    private List<Entry> holding(List<Placed> once) {
        List<Entry> holding = new ArrayList<>();
        for (Corrections.Group group :
                Corrections.groups(once.stream().map(Placed::entry).toList())) {
            if (group.holding().stream().allMatch(this::isTooEarly)) {
                holding.addAll(untilThen(group, once));
            } else if (group.holding().get(0).act() instanceof Act.Withdrawn) {
                group.all()
                        .forEach(entry ->
                                withdrawn.put(entry.id(), group.holding().get(0).id()));
            } else {
                holding.addAll(group.holding());
            }
        }
        return holding.stream()
                .filter(entry -> !(entry.act() instanceof Act.Withdrawn))
                .toList();
    }

    private boolean isTooEarly(Entry entry) {
        return entry.at().isAfter(now) && (entry.act().reassures() || entry.act() instanceof Act.Withdrawn);
    }

    /** Of what an entry of the future corrects: what warns counts until then, what reassures is in doubt already. */
    private List<Entry> untilThen(Corrections.Group group, List<Placed> once) {
        List<Entry> before = group.withoutHolding().stream()
                .filter(entry -> !(entry.act() instanceof Act.Withdrawn) && !isTooEarly(entry))
                .toList();
        List<Entry> warning =
                before.stream().filter(entry -> !entry.act().reassures()).toList();
        String less = before.isEmpty()
                ? ""
                : warning.isEmpty() ? ", nor does what it corrects any more" : "; what it corrects counts until then";
        group.holding().forEach(entry -> stillToCome(entry, "it does not count until then" + less, once));
        return warning;
    }

    /** What puts gear into service needs somebody who answers for it; an inspection without a name is not even read. */
    private void noteNameless(Entry entry, List<Placed> once) {
        if (entry.act() instanceof Act.Fitted && !entry.isNamed()) {
            remarkAt(
                    entry,
                    once,
                    "it does not say who fitted it: it puts no gear back into service",
                    "Enter it again with --by NAME --replaces " + shown(entry.id()) + ".");
        }
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
        stillToCome(entry, counts ? "it counts all the same" : "it does not count until then", once);
        return counts;
    }

    private void stillToCome(Entry entry, String what, List<Placed> once) {
        remarkAt(
                entry,
                once,
                "its time " + entry.at() + " is still to come; " + what,
                "Is the clock of one computer wrong? Correct it with --replaces " + shown(entry.id()) + ".");
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
