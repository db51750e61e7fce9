package tautlog.desk.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tautlog.config.NearestKey;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.Screen;
import tautlog.service.Complaint;
import tautlog.service.Ledger;

/** What of a ledger could not be read or counts for none of the winches that were recorded; every page that reads one has it on top. */
public final class LedgerDoubts {
    /** Chosen: a file that is no ledger shall not push the page's own text away. */
    private static final int MOST_LINES = 10;

    private final Ledger ledger;
    private final Set<String> winches;

    /** @param winches those of the recordings that were read */
    public LedgerDoubts(Ledger ledger, Set<String> winches) {
        this.ledger = ledger;
        this.winches = Set.copyOf(winches);
    }

    /** The page with its doubts as the first section; as it was when there are none. */
    public Document onTopOf(Document page) {
        return section(List.of())
                .map(doubts -> {
                    List<Document.Section> sections = new ArrayList<>(List.of(doubts));
                    sections.addAll(page.sections());
                    return new Document(page.title(), page.subtitle(), page.banner(), sections);
                })
                .orElse(page);
    }

    /** For programs: each line, then each winch, a sentence or two. */
    public List<String> sentences() {
        return Stream.concat(ledger.complaints().stream().map(Complaint::toString), ofOtherWinches().stream())
                .toList();
    }

    /**
     * One notice for each doubt.
     *
     * @param further notices that belong there, too
     * @return empty when there is nothing to say
     */
    Optional<Document.Section> section(List<Block> further) {
        List<Block> blocks = new ArrayList<>(lines());
        ofOtherWinches()
                .forEach(sentence -> blocks.add(new Block.Notice(Block.Tone.CAUTION, "Another winch", sentence)));
        blocks.addAll(further);
        return blocks.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Document.Section(Screen.counted(blocks.size(), "thing") + " unread or in doubt", blocks));
    }

    /** A winch that is misspelt would lose its entries without a word; a sentence or two for each. */
    Set<String> ofOtherWinches() {
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
