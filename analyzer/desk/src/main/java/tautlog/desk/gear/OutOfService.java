package tautlog.desk.gear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.OverloadedGear;
import tautlog.desk.page.Screen;
import tautlog.rig.Band;

/** What nobody may use: one notice for each gear, however many overloads led to it. */
public final class OutOfService {
    private final List<GearLife> lives;
    private final Screen screen;
    private final boolean withWinch;

    /** @param withWinch gear of several winches is told apart */
    public OutOfService(List<GearLife> lives, Screen screen, boolean withWinch) {
        this.lives = List.copyOf(lives);
        this.screen = screen;
        this.withWinch = withWinch;
    }

    public Document.Section section() {
        return new Document.Section("Out of service", blocks());
    }

    /** The notices, worst band first; a sentence when there are none. */
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        lives.stream()
                .filter(life -> life.out().findAny().isPresent())
                .sorted(Comparator.comparing((GearLife life) ->
                                worst(life).isPresent() ? worst(life).get().compareTo(Band.PAST_WLL) : -1)
                        .reversed())
                .forEach(life -> blocks.add(notice(life)));
        if (blocks.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "No overload in these recordings, and no entry, that an inspection does not answer. That says nothing"
                            + " of the gear's state, nor of pulls that were not recorded."));
        }
        lives.stream()
                .filter(life -> life.toInspect().findAny().isPresent())
                .forEach(life -> blocks.add(new Block.Notice(
                        Block.Tone.CAUTION,
                        life.name(withWinch) + " (may be overloaded)",
                        "its limit is only known as at most, and it was in an overload of its hookup. Inspect it.")));
        return blocks;
    }

    private static Optional<Band> worst(GearLife life) {
        return life.out().flatMap(piece -> piece.worst().stream()).max(Comparator.naturalOrder());
    }

    private Block notice(GearLife life) {
        Optional<Band> band = worst(life);
        List<String> sentences = new ArrayList<>();
        boolean isScrap = life.out().allMatch(piece -> piece.standing() == Standing.SCRAP);
        sentences.add(
                isScrap
                        ? "Scrap it, as its inspection says."
                                + (band.filter(passed -> passed.compareTo(Band.PAST_PROOF) >= 0)
                                                .isPresent()
                                        ? " Inspect its neighbours in the line."
                                        : "")
                        : band.map(passed -> OverloadedGear.todo(life.id(), passed))
                                .orElse("It stays out of service until a competent person has inspected it."));
        overloads(life).ifPresent(sentences::add);
        which(life).ifPresent(sentences::add);
        life.out().flatMap(piece -> piece.reasons().stream()).distinct().forEach(sentences::add);
        sentences.add(
                isScrap
                        ? "It stands here until it is entered as retired, or other as fitted."
                        : "It stays so here until an inspection by a named competent person stands in the ledger.");
        return new Block.Notice(
                Block.Tone.ACTION,
                life.name(withWinch)
                        + band.map(passed -> " (" + passed.word() + ")").orElse(""),
                String.join(" ", sentences));
    }

    private Optional<String> overloads(GearLife life) {
        List<GearLoad> open = life.out()
                .flatMap(piece -> piece.open().stream())
                .filter(load -> !load.event().onlyMayBe())
                .distinct()
                .toList();
        return open.stream()
                .max(Comparator.comparingDouble(load -> load.event().share()))
                .map(most -> "Overloaded " + Screen.counted(open.size(), "time")
                        + (isInspectedSince(life, open)
                                ? ", and no inspection put it back into service since"
                                : " without an inspection since")
                        + "; the greatest load was "
                        + (most.event().atLeast() ? "at least " : "")
                        + screen.force(most.event().loadNewtons()) + ", "
                        + (most.event().atLeast() ? "at least " : "")
                        + Screen.percent(most.event().share()) + " of the "
                        + screen.force(most.event().allowedNewtons()) + " allowed, " + GearWords.time(most, screen)
                        + ".");
    }

    private static boolean isInspectedSince(GearLife life, List<GearLoad> open) {
        return life.inspections().stream()
                .anyMatch(entry -> open.stream().anyMatch(load -> load.wasBefore(entry.at())));
    }

    /** Which of several identical pieces. */
    private static Optional<String> which(GearLife life) {
        List<Piece> out = life.out().toList();
        int count = out.stream().mapToInt(Piece::count).sum();
        String names = out.stream().flatMap(piece -> piece.name().stream()).collect(Collectors.joining(", "));
        int all = life.pieces().stream()
                .filter(piece -> piece.standing() != Standing.RETIRED)
                .mapToInt(Piece::count)
                .sum();
        if (all <= 1) {
            return names.isEmpty() ? Optional.empty() : Optional.of("It is the piece " + names + ".");
        }
        int unnamed = out.stream()
                .filter(piece -> piece.name().isEmpty())
                .mapToInt(Piece::count)
                .sum();
        return Optional.of("Of " + all + " identical pieces " + count + (count == 1 ? " is" : " are") + " out"
                + (names.isEmpty()
                        ? ""
                        : " (" + names + (unnamed > 0 ? " and " + unnamed + " without a name" : "") + ")")
                + ": which of them carried it, nobody said.");
    }
}
