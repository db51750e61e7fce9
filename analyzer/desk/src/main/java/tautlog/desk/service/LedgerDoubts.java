package tautlog.desk.service;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tautlog.config.NearestKey;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.Screen;
import tautlog.desk.report.LeftOut;
import tautlog.service.Complaint;
import tautlog.service.Entry;
import tautlog.service.Ledger;
import tautlog.service.WorkedTwice;

/** What of a ledger could not be read, counts for none of the winches that were recorded, or counts and may be wrong; every page that reads one has it on top. */
public final class LedgerDoubts {
    /** Chosen: a file that is no ledger shall not push the page's own text away. */
    private static final int MOST_LINES = 10;
    /** As in the help of every command. */
    private static final String LEDGER = "ledger.jsonl";

    private final Ledger ledger;
    private final KnownGear known;

    /** @param known of the recordings that were read */
    public LedgerDoubts(Ledger ledger, KnownGear known) {
        this.ledger = ledger;
        this.known = known;
    }

    /** The page with its doubts as the first section; as it was when there are none. */
    public Document onTopOf(Document page) {
        return section(new LeftOut(List.of(), List.of()))
                .map(doubts -> {
                    List<Document.Section> sections = new ArrayList<>(List.of(doubts));
                    sections.addAll(page.sections());
                    return new Document(page.title(), page.subtitle(), page.banner(), sections);
                })
                .orElse(page);
    }

    /** For programs: each line, then what stands beside lines, a sentence or two. */
    public List<String> sentences() {
        return Stream.concat(ledger.complaints().stream().map(Complaint::toString), besideLines().stream())
                .toList();
    }

    /**
     * One notice for each doubt.
     *
     * @param leftOut what of the recordings could not be read, which belongs there, too
     * @return empty when there is nothing to say
     */
    Optional<Document.Section> section(LeftOut leftOut) {
        List<Block> blocks = new ArrayList<>(lines());
        caution(blocks, "Another winch", ofOtherWinches());
        caution(blocks, "Other gear", new GearDoubts(ledger, known).sentences());
        caution(blocks, "Entered twice", workedTwice());
        Stream.concat(leftOut.sentences().stream(), leftOut.damage().stream())
                .forEach(sentence -> blocks.add(new Block.Notice(Block.Tone.ACTION, "Left out", sentence)));
        return blocks.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Document.Section(Screen.counted(blocks.size(), "thing") + " unread or in doubt", blocks));
    }

    private static void caution(List<Block> blocks, String label, Collection<String> sentences) {
        sentences.forEach(sentence -> blocks.add(new Block.Notice(Block.Tone.CAUTION, label, sentence)));
    }

    /** Doubts that are not of single lines, a sentence or two for each. */
    Set<String> besideLines() {
        Set<String> sentences = new LinkedHashSet<>(ofOtherWinches());
        sentences.addAll(new GearDoubts(ledger, known).sentences());
        sentences.addAll(workedTwice());
        return sentences;
    }

    /** The same days entered on two laptops are added up. */
    private List<String> workedTwice() {
        List<WorkedTwice> twice = WorkedTwice.in(ledger, known.winches());
        List<String> sentences = new ArrayList<>();
        twice.stream()
                .limit(MOST_LINES)
                .forEach(pair -> sentences.add("Entries " + words(pair.one()) + " and " + words(pair.other())
                        + " tell of work in the same time: both are added up. If they are of the same work, take one back:"
                        + " tautlog service withdraw " + pair.other().id() + " --ledger "
                        + LEDGER + "."));
        if (twice.size() > MOST_LINES) {
            sentences.add((twice.size() - MOST_LINES) + " more pairs of entries tell of work in the same time.");
        }
        return sentences;
    }

    private static String words(Entry worked) {
        return worked.id() + worked.by().map(by -> " (by " + by + ")").orElse("");
    }

    /** A winch that is misspelt would lose its entries without a word; a sentence or two for each. */
    private Set<String> ofOtherWinches() {
        Set<String> winches = known.winches();
        Set<String> sentences = new TreeSet<>();
        ledger.entries().stream()
                .flatMap(entry -> entry.winch().stream())
                .filter(winch -> !winches.contains(winch))
                .forEach(winch -> sentences.add("Entries of the ledger are of a winch \"" + winch
                        + "\", of which no recording is here: they count for nothing here."
                        + NearestKey.to(winch, winches)
                                .map(near -> " Did somebody mean \"" + near + "\"? Correct them with --winch.")
                                .orElse("")));
        return sentences;
    }

    private List<Block> lines() {
        List<Complaint> complaints = ledger.complaints();
        List<Block> blocks = new ArrayList<>();
        if (!complaints.isEmpty() && ledger.ids().isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.ACTION,
                    complaints.get(0).file(),
                    "this is no ledger: none of its lines is an entry. Is it the right file?"));
        }
        List<Complaint> shown = shown(complaints);
        shown.forEach(complaint -> blocks.add(notice(complaint)));
        if (shown.size() < complaints.size()) {
            blocks.add(new Block.Notice(
                    Block.Tone.ACTION,
                    complaints.get(0).file(),
                    Screen.counted(complaints.size() - shown.size(), "more line") + " as well."));
        }
        return blocks;
    }

    /** What counts for nothing before what is only remarked. */
    private static List<Complaint> shown(List<Complaint> complaints) {
        return complaints.size() <= MOST_LINES
                ? complaints
                : complaints.stream()
                        .sorted(Comparator.comparing(Complaint::weight))
                        .limit(MOST_LINES)
                        .toList();
    }

    private static Block notice(Complaint complaint) {
        return new Block.Notice(
                complaint.weight() == Complaint.Weight.IGNORED ? Block.Tone.ACTION : Block.Tone.CAUTION,
                complaint.file() + ", line " + complaint.line(),
                complaint.found() + (complaint.found().endsWith(".") ? " " : ". ") + complaint.advice());
    }
}
