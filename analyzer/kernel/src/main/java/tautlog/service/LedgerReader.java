package tautlog.service;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    /** By an entry that holds although what it corrects was taken back: which entry did that. */
    private final Map<Entry, String> takenBack = new HashMap<>();

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
        List<Entry> entries = counting(once.stream().map(Placed::entry).toList(), once).stream()
                .sorted(Comparator.comparing(Entry::at).thenComparing(Entry::id).thenComparing(EntryLine::of))
                .toList();
        for (Entry entry : entries) {
            noteNameless(entry, once);
            noteTakenBack(entry, once);
            if (entry.at().isAfter(now)) {
                stillToCome(entry, "it counts all the same", once);
            }
        }
        complaints.sort(Comparator.comparingInt(Complaint::line));
        Set<String> ids = once.stream().map(one -> one.entry().id()).collect(Collectors.toSet());
        return new Ledger(entries, ids, withdrawn, complaints);
    }

    private List<Entry> counting(List<Entry> entries, List<Placed> once) {
        return Corrections.groups(entries).stream()
                .flatMap(group -> counting(group, once).stream())
                .toList();
    }

    /** What counts of entries about the same thing. */
    private List<Entry> counting(Corrections.Group group, List<Placed> once) {
        List<Entry> holding = group.holding();
        if (holding.stream().allMatch(this::isTooEarly)) {
            return untilThen(group, once);
        }
        if (holding.stream().allMatch(entry -> entry.act() instanceof Act.Withdrawn && !isTooEarly(entry))) {
            group.all()
                    .forEach(entry -> withdrawn.put(entry.id(), holding.get(0).id()));
            return List.of();
        }
        if (holding.size() > 1) {
            return conflicting(group, once);
        }
        keepTakenBack(group);
        return holding;
    }

    private boolean isTooEarly(Entry entry) {
        return entry.at().isAfter(now) && !surelyWarns(entry);
    }

    private static boolean surelyWarns(Entry entry) {
        return !entry.act().reassures() && !(entry.act() instanceof Act.Withdrawn);
    }

    private static List<Entry> warning(List<Entry> entries) {
        return entries.stream().filter(LedgerReader::surelyWarns).toList();
    }

    /**
     * Of what an entry of the future corrects: what warns counts until then, what reassures is in doubt already. Corrections of the future
     * may stand on each other.
     */
    private List<Entry> untilThen(Corrections.Group group, List<Placed> once) {
        List<Entry> before = counting(group.others(), once);
        List<Entry> warning = warning(before);
        String less = before.isEmpty()
                ? ""
                : warning.isEmpty() ? ", nor does what it corrects any more" : "; what it corrects counts until then";
        group.holding().forEach(entry -> stillToCome(entry, "it does not count until then" + less, once));
        return warning;
    }

    /**
     * One id with several contents: what warns counts. So does what warns and is not corrected by every content, or by one of the future only.
     */
    private List<Entry> conflicting(Corrections.Group group, List<Placed> once) {
        List<Entry> holding = group.holding();
        List<Entry> counting = new ArrayList<>(warning(holding));
        boolean isCorrecting = holding.stream().map(Entry::replaces).distinct().count() == 1
                && holding.stream().noneMatch(this::isTooEarly);
        List<Entry> again = isCorrecting ? List.of() : warning(counting(group.others(), once));
        String more = again.isEmpty() ? "" : ", and what it may correct counts";
        String both = counting.isEmpty() ? "neither counts" : "both count";
        boolean isMixed = !counting.isEmpty() && counting.size() < holding.size();
        for (Entry entry : holding) {
            String alone = counting.contains(entry) ? "this one counts" : "this one does not count";
            doubted(entry, (isMixed ? alone : both) + more, once);
        }
        counting.addAll(again);
        return counting;
    }

    /** An entry may be taken back by one person and corrected by another, who do not know of each other. */
    private void keepTakenBack(Corrections.Group group) {
        group.all().stream()
                .filter(entry -> entry.act() instanceof Act.Withdrawn && !isTooEarly(entry))
                .map(Entry::id)
                .min(Comparator.naturalOrder())
                .ifPresent(by -> takenBack.put(group.holding().get(0), by));
    }

    private void noteTakenBack(Entry entry, List<Placed> once) {
        Optional.ofNullable(takenBack.get(entry))
                .ifPresent(by -> remarkAt(
                        entry,
                        once,
                        "it corrects what \"" + shown(by) + "\" took back: it counts all the same",
                        "Is it right? If not, take it back, too: tautlog service withdraw " + shown(entry.id()) + "."));
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

    private void doubted(Entry entry, String what, List<Placed> once) {
        remarkAt(
                entry,
                once,
                "\"" + shown(entry.id()) + "\" stands here with other content than on line " + otherLines(entry, once)
                        + "; " + what,
                "Which is right? Give the other an id of its own, or put # before it.");
    }

    private static String otherLines(Entry entry, List<Placed> once) {
        return once.stream()
                .filter(one ->
                        one.entry().id().equals(entry.id()) && !one.entry().equals(entry))
                .map(one -> Integer.toString(one.line()))
                .collect(Collectors.joining(", "));
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
