package tautlog.usage;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import tautlog.detect.Known;
import tautlog.rig.RopeMake;
import tautlog.usage.RopeCriterion.Status;

/**
 * Holds what was found on a wire rope against every discard criterion in print that is known here. Sources disagree (slings, running
 * ropes, mine hoists, cranes); one that is reached is enough. None that is reached says nothing for the rope: a competent person decides.
 */
public final class RopeDiscard {
    static final String ISO = "ISO 4309:2017";
    private static final String SLINGS = "29 CFR 1910.184(f)(5)";
    private static final String HOISTS = "practice for running hoist ropes (ASME B30.16 check lists)";
    private static final String MINES = "30 CFR 56.19024";

    /** Load-bearing wires from, to, broken over 6d, over 30d: single layer on steel sheaves, M1 to M4, ordinary lay; from memory. */
    private static final int[][] ISO_ROWS = {
        {101, 120, 5, 10},
        {141, 160, 6, 13},
        {161, 180, 7, 14},
        {181, 200, 8, 16},
        {201, 220, 9, 18},
        {221, 240, 10, 19}
    };

    private final RopeMake make;
    private final RopeCondition found;
    private final List<RopeCriterion> criteria = new ArrayList<>();

    private RopeDiscard(RopeMake make, RopeCondition found) {
        this.make = make;
        this.found = found;
    }

    /** Every criterion, reached or not, in the order of the lists they come from. */
    public static List<RopeCriterion> criteria(RopeMake make, RopeCondition found) {
        RopeDiscard discard = new RopeDiscard(make, found);
        discard.brokenWires();
        discard.partsOfAllWires();
        discard.overDiameters();
        discard.diameter();
        discard.damage();
        return List.copyOf(discard.criteria);
    }

    private void brokenWires() {
        count("in one lay length", found.brokenInLay(), 10, SLINGS, Status.SEEN);
        count("of one strand in one lay length", found.brokenInStrand(), 5, SLINGS, Status.SEEN);
        count("in one lay length", found.brokenInLay(), 12, HOISTS, Status.SEEN);
        count("of one strand in one lay length", found.brokenInStrand(), 4, HOISTS, Status.SEEN);
        count("at the termination (two adjacent ones discard)", found.brokenAtEnd(), 2, ISO, Status.FROM_MEMORY);
    }

    private void count(String where, OptionalInt broken, int discard, String source, Status status) {
        add(
                discard + " or more broken wires " + where,
                source,
                status,
                broken,
                broken.isPresent() ? answer(broken.getAsInt() >= discard) : Known.UNKNOWN);
    }

    private void partsOfAllWires() {
        part("5 % of the rope's wires broken in one lay length", found.brokenInLay(), make.outerStrandWires(), 5);
        part("15 % of one strand's wires broken in one lay length", found.brokenInStrand(), make.wiresOfAStrand(), 15);
    }

    private void part(String rule, OptionalInt broken, OptionalInt wires, int percent) {
        boolean isKnown = broken.isPresent() && wires.isPresent();
        String of =
                wires.isPresent() ? " (of about " + wires.getAsInt() + ")" : " (how many wires it has is not known)";
        add(
                "more than " + rule + of,
                MINES,
                Status.SEEN,
                broken,
                isKnown ? answer(100L * broken.getAsInt() > (long) percent * wires.getAsInt()) : Known.UNKNOWN);
    }

    private void overDiameters() {
        for (int[] row : ISO_ROWS) {
            OptionalInt wires = make.outerStrandWires();
            if (wires.isPresent() && row[0] <= wires.getAsInt() && wires.getAsInt() <= row[1]) {
                count("over 6 diameters", found.brokenIn6d(), row[2], ISO, Status.FROM_MEMORY);
                count("over 30 diameters", found.brokenIn30d(), row[3], ISO, Status.FROM_MEMORY);
                return;
            }
        }
        unknownRow("over 6 diameters", found.brokenIn6d());
        unknownRow("over 30 diameters", found.brokenIn30d());
    }

    private void unknownRow(String where, OptionalInt broken) {
        add(
                "broken wires " + where + ": no row is known for this rope",
                ISO,
                Status.FROM_MEMORY,
                broken,
                Known.UNKNOWN);
    }

    private void diameter() {
        thinner("6", MINES, Status.SEEN, "");
        if (make.hasSteelCore().isEmpty()) {
            thinner(
                    "7.5",
                    ISO,
                    Status.FROM_MEMORY,
                    ", uniformly (of a rope with a steel core; the core is not written)");
        } else if (make.hasSteelCore().get()) {
            thinner("7.5", ISO, Status.FROM_MEMORY, ", uniformly (steel core)");
            thicker("5", " (steel core)");
        } else {
            thinner("10", ISO, Status.FROM_MEMORY, ", uniformly (fibre core)");
            thicker("10", " (fibre core)");
        }
    }

    private void thinner(String percent, String source, Status status, String note) {
        boolean isAbove = source.equals(MINES);
        diameter(
                "diameter " + (isAbove ? "more than " : "") + percent + " % " + (isAbove ? "" : "or more ")
                        + "below nominal" + note,
                source,
                status,
                new BigDecimal(percent).negate(),
                isAbove);
    }

    private void thicker(String percent, String note) {
        diameter(
                "diameter " + percent + " % or more above nominal at one place" + note,
                ISO,
                Status.FROM_MEMORY,
                new BigDecimal(percent),
                false);
    }

    /** @param isStrict the change itself is still allowed */
    private void diameter(String rule, String source, Status status, BigDecimal percent, boolean isStrict) {
        String text = found.diameterMillimetres()
                .map(mm -> mm.toPlainString() + " mm")
                .orElse("");
        Known reached = Known.UNKNOWN;
        if (found.diameterMillimetres().isPresent()
                && make.diameterMillimetres().isPresent()) {
            BigDecimal hundred = BigDecimal.valueOf(100);
            BigDecimal measured = found.diameterMillimetres().get().multiply(hundred);
            int beyond = measured.compareTo(make.diameterMillimetres().get().multiply(hundred.add(percent)));
            int direction = percent.signum() * beyond;
            reached = answer(isStrict ? direction > 0 : direction >= 0);
        }
        criteria.add(new RopeCriterion(rule, source, status, text, reached));
    }

    private void damage() {
        for (String word : found.damage()) {
            RopeDamage.of(word)
                    .ifPresentOrElse(
                            damage -> criteria.add(new RopeCriterion(
                                    damage.words(), damage.source(), damage.status(), word, Known.YES)),
                            () -> criteria.add(new RopeCriterion(
                                    "damage in other words",
                                    "no criterion is known for it",
                                    Status.FROM_MEMORY,
                                    word,
                                    Known.UNKNOWN)));
        }
    }

    private void add(String rule, String source, Status status, OptionalInt broken, Known reached) {
        criteria.add(new RopeCriterion(
                rule, source, status, broken.isPresent() ? String.valueOf(broken.getAsInt()) : "", reached));
    }

    private static Known answer(boolean yes) {
        return yes ? Known.YES : Known.NO;
    }
}
