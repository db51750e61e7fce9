package tautlog.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.desk.uncertainty.Interval;
import tautlog.rig.Band;
import tautlog.rig.LoadedItem;

class BandDoubtTest {
    /** Allowed 10 kN, proof load 20 kN, breaking load 40 kN. */
    private static LoadedItem item(boolean allowedIsAtMost) {
        return new LoadedItem(
                "chain",
                "choker",
                BigDecimal.ONE,
                new BigDecimal(10_000),
                allowedIsAtMost,
                Optional.of(new BigDecimal(20_000)),
                Optional.of(new BigDecimal(40_000)),
                List.of());
    }

    private static Interval upTo(double newtons) {
        return new Interval(OptionalDouble.of(1_000), OptionalDouble.of(newtons), Optional.empty(), List.of());
    }

    @Test
    void theBandIsThatOfTheUpperEnd() {
        assertEquals(Optional.empty(), BandDoubt.mayBe(item(false), upTo(9_000)));
        assertEquals(Optional.of(Band.PAST_WLL), BandDoubt.mayBe(item(false), upTo(11_000)));
        assertEquals(Optional.of(Band.PAST_PROOF), BandDoubt.mayBe(item(false), upTo(21_000)));
    }

    @Test
    void anAllowedLoadThatIsOnlyKnownAsAtMostRulesNothingOut() {
        assertEquals(Optional.of(Band.PAST_WLL), BandDoubt.mayBe(item(true), upTo(9_000)));
        assertEquals(Optional.of(Band.PAST_PROOF), BandDoubt.mayBe(item(true), upTo(21_000)));
    }

    @Test
    void nothingIsSaidWhereNothingIsKnownOfTheTension() {
        assertEquals(Optional.empty(), BandDoubt.mayBe(item(false), Interval.unknown("why")));
        assertEquals(Optional.empty(), BandDoubt.mayBe(item(true), Interval.unknown("why")));
    }
}
