package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tautlog.oracle.TenHertz.only;
import static tautlog.oracle.TenHertz.outing;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.detect.Finding.TroubleKind;
import tautlog.detect.Second;

/** Cases worked out by hand, at {@link TenHertz}: sensor trouble, seconds, rainflow and the empty outing. */
class OracleTest {
    @Test
    void troubleIsTold() {
        // given an end stop in 2 and 3, open bridge in 4 and 5, a jump of 11 > N(1 s) = 10 from 6 to 18, a peak of 2001
        // at 19
        OutingBuilder outing = outing().hold(0, 2)
                .samples(8_388_607, 8_388_607)
                .openBridge(5, 5)
                .hold(0, 1)
                .missing(11)
                .samples(0, 2001, 0);

        // when
        var troubles = only(Finding.Trouble.class, outing);

        // then
        assertEquals(
                List.of(
                        new Finding.Trouble(TroubleKind.END_STOP, 2, 3),
                        new Finding.Trouble(TroubleKind.OPEN_BRIDGE, 4, 5),
                        new Finding.Trouble(TroubleKind.GAP, 6, 18),
                        new Finding.Trouble(TroubleKind.ONE_SAMPLE_PEAK, 19, 19)),
                troubles);
    }

    @Test
    void zeroDriftsWhenATenSecondMeanDiffersByMoreThanTheDrift() {
        // given stretches of 100: 0, 200 (not more than drift), 201 (more), one that is no quiet stretch (±100 is 2 %
        // of R), 201, 0
        OutingBuilder outing = outing().hold(0, 100).hold(200, 100).hold(201, 100);
        outing.hold(100, 50).hold(301, 50).hold(201, 100).hold(0, 100);

        // when, then one excursion from 200 to 499
        assertEquals(
                List.of(new Finding.Trouble(TroubleKind.ZERO_DRIFT, 200, 499)), only(Finding.Trouble.class, outing));
    }

    @Test
    void zeroIsUnprovenAfterMoreThanTenMinutesWithoutAQuietStretch() {
        // given 6001 and 6000 samples of 1500 N, which is no unloaded line
        OutingBuilder longer = outing().hold(1500, 6001);
        OutingBuilder shorter = outing().hold(1500, 6000);

        // when, then
        assertEquals(
                List.of(new Finding.Trouble(TroubleKind.ZERO_UNPROVEN, 0, 6000)), only(Finding.Trouble.class, longer));
        assertEquals(List.of(), only(Finding.Trouble.class, shorter));
    }

    @Test
    void secondsAreCountedFromTheFirstSample() {
        // given the first number 5; second 0 is 5–14 with 7 missing, second 1 is 15–24, of which 15 and 16 are there
        OutingBuilder outing =
                outing().startingAt(5).samples(0, 10).missing(1).hold(4000, 7).samples(8001, -1);
        // and a reading at 0.7 s, which sits at 7 … the latest present is 6; pulses at 0.6 and 0.7 s: 600 rpm
        outing.shaft(700_000, 0, 600_000, 700_000);

        // when
        var seconds = Oracle.of(outing.build()).seconds();

        // then sums 10 + 7 · 4000 and 8000; shares 4000/8000 and 8001/8000
        assertEquals(
                List.of(
                        new Second(0, 5, 0, 4000, 28_010, 9, OptionalDouble.of(600), "straight", 0.5, Second.GAP),
                        new Second(
                                1,
                                15,
                                -1,
                                8001,
                                8000,
                                2,
                                OptionalDouble.empty(),
                                "straight",
                                1.000125,
                                Second.OVER_LIMIT)),
                seconds);
    }

    @Test
    void rainflowOfTheStandardsExampleGivesItsTable() {
        // given the history of ASTM E1049-85, figure 6: -2 1 -3 5 -1 3 -4 4 -2, in units of 1000 N on top of 6000 N, as
        // one pull
        OutingBuilder outing = outing().hold(0, 1)
                .samples(4000, 7000, 3000, 11_000, 5000, 9000, 2000, 10_000, 4000)
                .hold(0, 30);

        // when
        var cycles = Oracle.of(outing.build()).cycles();

        // then ranges 3 (half), 4 (half and full), 6, 8, 8, 9 (halves); sums from 12 000 plus those of the points
        assertEquals(
                List.of(
                        new Answers.Cycle(3000, 11_000, 1),
                        new Answers.Cycle(4000, 10_000, 1),
                        new Answers.Cycle(4000, 14_000, 2),
                        new Answers.Cycle(6000, 14_000, 1),
                        new Answers.Cycle(8000, 12_000, 1),
                        new Answers.Cycle(8000, 14_000, 1),
                        new Answers.Cycle(9000, 13_000, 1)),
                cycles);
    }

    @Test
    void reversalSmallerThanTheGateIsNone() {
        // given a gate of 0.02 · 10 000 = 200 N: 2000 up to 3000, back 199, up to 3100, back 200, to 3000
        OutingBuilder outing =
                outing().hold(0, 1).samples(2000, 3000, 2801, 3100, 2900, 3000).hold(0, 30);

        // when, then points 2000, 3100, 2900, 3000: 1100 (half), 200 (half), 100 (half)
        assertEquals(
                List.of(
                        new Answers.Cycle(100, 5900, 1),
                        new Answers.Cycle(200, 6000, 1),
                        new Answers.Cycle(1100, 5100, 1)),
                Oracle.of(outing.build()).cycles());
    }

    @Test
    void emptyOutingHasNothingToTell() {
        // given, when
        Answers nothing = Oracle.of(outing().build());

        // then
        assertEquals(new Answers(List.of(), List.of(), List.of(), List.of(), List.of()), nothing);
    }
}
