package tautlog.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class HourSumTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();

    private static Report.Hours part(OptionalDouble shaft, OptionalDouble joint) {
        return new Report.Hours(shaft, 2, shaft, shaft, joint, joint.isEmpty(), List.of(2.0, 0.0, 0.0, 0.0, 0.0));
    }

    @Test
    void addsUpWhatEveryPartKnows() {
        Report.Hours part = part(OptionalDouble.of(3), OptionalDouble.of(0.5));

        Report.Hours sum = HourSum.of(List.of(part, part));

        assertEquals(6, sum.shaftHours().orElseThrow());
        assertEquals(1, sum.jointHours().orElseThrow());
        assertEquals(4, sum.pullHours());
        assertFalse(sum.shaftIsAtLeast());
    }

    @Test
    void saysAtLeastOfShaftHoursThatSomePartsDoNotKnowAndNothingOfTheJoint() {
        Report.Hours sum =
                HourSum.of(List.of(part(OptionalDouble.of(3), OptionalDouble.of(0.5)), part(UNKNOWN, UNKNOWN)));

        assertEquals(3, sum.shaftHours().orElseThrow());
        assertTrue(sum.shaftIsAtLeast());
        assertTrue(sum.jointHours().isEmpty());
    }

    @Test
    void knowsNothingOfAShaftThatNoPartKnows() {
        Report.Hours sum = HourSum.of(List.of(part(UNKNOWN, UNKNOWN), part(UNKNOWN, UNKNOWN)));

        assertTrue(sum.shaftHours().isEmpty());
        assertFalse(sum.shaftIsAtLeast());
    }
}
