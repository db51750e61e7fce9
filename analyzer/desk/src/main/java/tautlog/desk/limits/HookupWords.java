package tautlog.desk.limits;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.desk.page.Block;
import tautlog.quantity.ForceUnit;
import tautlog.rig.FullPull;
import tautlog.rig.Gear;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;

/** What is said of a hookup whatever it is asked for: its name, its limit, what to beware of, what the winch's full pull does. */
public final class HookupWords {
    private final Rig rig;
    private final Hookup hookup;
    private final FullPull full;
    private final ForceUnit unit;

    public HookupWords(Rig rig, Hookup hookup, ForceUnit unit) {
        this.rig = rig;
        this.hookup = hookup;
        this.full = FullPull.of(rig, hookup);
        this.unit = unit;
    }

    /** {@code straight (selector 1, default)}. */
    public String heading() {
        List<String> marks = new ArrayList<>();
        hookup.selector().ifPresent(position -> marks.add("selector " + position));
        if (hookup.isDefault()) {
            marks.add("default");
        }
        return hookup.id() + (marks.isEmpty() ? "" : " (" + String.join(", ", marks) + ")");
    }

    /** The limit and what sets it, a sentence. */
    public String limit() {
        String atMost = hookup.limit().isAtMost() ? "at most " : "";
        return "Limit of " + hookup.id() + ": " + atMost
                + unit.format(hookup.limit().newtons()) + " in the line, set by "
                + hookup.limit().governing() + ".";
    }

    /** What must not be missed before any figure is read; none when there is nothing. */
    public List<Block> warnings() {
        List<Block> blocks = new ArrayList<>();
        if (hookup.limit().isAtMost()) {
            blocks.add(caution(
                    "upper bound",
                    "The true limit is lower than this figure by an unknown amount; see below at "
                            + names(hookup.items().stream()
                                    .filter(LoadedItem::allowedIsAtMost)
                                    .toList()) + "."));
        }
        hookup.items()
                .forEach(item -> outOfService(item)
                        .ifPresent(reason -> blocks.add(new Block.Notice(Block.Tone.ACTION, item.gear(), reason))));
        full.chokersThatOutlastTheRope()
                .forEach(choker -> blocks.add(caution(
                        choker.gear(),
                        "This choker would outlast the rope. A rope that parts flies further than a choker: choose a choker"
                                + " that breaks first, and stay clear.")));
        full.chokersThatMayOutlastTheRope()
                .forEach(choker -> blocks.add(caution(
                        choker.gear(),
                        "Whether this choker or the rope parts first is unknown. A rope that parts flies further.")));
        return blocks;
    }

    private Optional<String> outOfService(LoadedItem item) {
        return rig.gear().stream()
                .filter(gear -> gear.id().equals(item.gear()))
                .findFirst()
                .flatMap(Gear::outOfService);
    }

    private static Block caution(String label, String text) {
        return new Block.Notice(Block.Tone.CAUTION, label, text);
    }

    /** What is past its limit, what breaks first, what is not known: sentences. */
    public List<String> atFullPull() {
        List<String> sentences = new ArrayList<>();
        sentences.add("At the winch's full pull (" + unit.format(full.tensionNewtons()) + ") "
                + (full.overloaded().isEmpty()
                        ? "no item is past its known limit."
                        : names(full.overloaded()) + " would be past what is allowed."));
        sentences.add(breaksFirst());
        if (!full.ofUnknownStrength().isEmpty()) {
            sentences.add(
                    "Breaking load unknown: " + names(full.ofUnknownStrength()) + ". Any of these may break before.");
        }
        if (!full.overloaded().isEmpty()) {
            sentences.add("A winch set to pull no more than the limit is as good a cure as stronger gear.");
        }
        return sentences;
    }

    private String breaksFirst() {
        return full.breaksFirst()
                .map(item -> {
                    BigDecimal tension = item.tensionAtBreaking().orElseThrow();
                    String within = tension.compareTo(full.tensionNewtons()) <= 0 ? ", within the winch's pull" : "";
                    return "As the tension rises, of those known " + item.gear() + " breaks first, at a tension of "
                            + (item.allowedIsAtMost() ? "at most " : "") + unit.format(tension) + within
                            + ". Worn or damaged gear breaks earlier.";
                })
                .orElse("Which item breaks first is unknown: no breaking load is published for any.");
    }

    /** {@code rope, choker}. */
    public static String names(List<LoadedItem> items) {
        return items.stream().map(LoadedItem::gear).distinct().collect(Collectors.joining(", "));
    }
}
