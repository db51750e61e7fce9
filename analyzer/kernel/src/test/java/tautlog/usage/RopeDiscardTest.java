package tautlog.usage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tautlog.detect.Known;
import tautlog.rig.RopeMake;

class RopeDiscardTest {
    private static final RopeMake ELEVEN = new RopeMake(Optional.of(new BigDecimal("11")), Optional.of("6x36 IWRC"));
    private static final RopeCondition NOTHING = found(-1, -1, -1, "", List.of());

    private static RopeCondition found(int lay, int strand, int sixDiameters, String millimetres, List<String> damage) {
        return new RopeCondition(
                entered(lay),
                entered(strand),
                entered(sixDiameters),
                OptionalInt.empty(),
                OptionalInt.empty(),
                millimetres.isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(millimetres)),
                damage);
    }

    private static OptionalInt entered(int count) {
        return count < 0 ? OptionalInt.empty() : OptionalInt.of(count);
    }

    private static List<String> reached(RopeMake make, RopeCondition found) {
        return RopeDiscard.criteria(make, found).stream()
                .filter(criterion -> criterion.reached() == Known.YES)
                .map(criterion -> criterion.source() + ": " + criterion.rule())
                .toList();
    }

    @Test
    void knowsNothingOfWhatWasNotEntered() {
        assertTrue(RopeDiscard.criteria(ELEVEN, NOTHING).stream()
                .allMatch(criterion -> criterion.reached() == Known.UNKNOWN
                        && criterion.found().isEmpty()));
    }

    /** 29 CFR 1910.184(f)(5): ten in a lay, five in a strand; running ropes 12 and 4; both as the reference prints them. */
    @Test
    void letsTheStricterOfTwoSourcesDecide() {
        assertEquals(List.of(), reached(ELEVEN, found(9, 3, -1, "", List.of())));
        assertEquals(
                List.of("29 CFR 1910.184(f)(5): 10 or more broken wires in one lay length"),
                reached(ELEVEN, found(10, 3, -1, "", List.of())));
        assertEquals(
                List.of(
                        "practice for running hoist ropes (ASME B30.16 check lists): 4 or more broken wires of one strand in one lay length"),
                reached(ELEVEN, found(4, 4, -1, "", List.of())));
    }

    /** 30 CFR 56.19024: more than 5 % of the wires in a lay; 5 % of 6 x 36 is 10.8, of 6 x 7 it is 2.1. */
    @Test
    void takesAPartOfTheWiresForRopesOfFewWires() {
        RopeMake coarse = new RopeMake(Optional.of(new BigDecimal("11")), Optional.of("6x7 FC"));

        assertEquals(List.of(), reached(coarse, found(2, 1, -1, "", List.of())));
        assertEquals(
                List.of("30 CFR 56.19024: more than 5 % of the rope's wires broken in one lay length (of about 42)"),
                reached(coarse, found(3, 1, -1, "", List.of())));
    }

    /** ISO 4309:2017, from memory: 201 to 220 wires 9 over 6d; the rope of 216 wires is in that row. */
    @Test
    void countsOverDiametersByTheRowOfTheRopesWires() {
        assertEquals(List.of(), reached(ELEVEN, found(-1, -1, 8, "", List.of())));
        assertEquals(
                List.of("ISO 4309:2017: 9 or more broken wires over 6 diameters"),
                reached(ELEVEN, found(-1, -1, 9, "", List.of())));
    }

    /** 11 mm less 6 % is 10.34 mm, less 7.5 % 10.175 mm. */
    @Test
    void measuresTheDiameterExactly() {
        assertEquals(List.of(), reached(ELEVEN, found(-1, -1, -1, "10.34", List.of())));
        assertEquals(
                List.of("30 CFR 56.19024: diameter more than 6 % below nominal"),
                reached(ELEVEN, found(-1, -1, -1, "10.339", List.of())));
        assertEquals(2, reached(ELEVEN, found(-1, -1, -1, "10.175", List.of())).size());
        assertEquals(
                List.of("ISO 4309:2017: diameter 5 % or more above nominal at one place (steel core)"),
                reached(ELEVEN, found(-1, -1, -1, "11.55", List.of())));
    }

    @Test
    void discardsForAKinkAndLeavesOtherWordsToAPerson() {
        assertEquals(
                List.of("29 CFR 1910.184(f)(5): kinked"),
                reached(ELEVEN, found(0, 0, 0, "11", List.of("kink", "fishy"))));
        assertEquals(
                Known.UNKNOWN,
                RopeDiscard.criteria(ELEVEN, found(0, 0, 0, "11", List.of("fishy"))).stream()
                        .filter(criterion -> criterion.found().equals("fishy"))
                        .findFirst()
                        .orElseThrow()
                        .reached());
    }
}
