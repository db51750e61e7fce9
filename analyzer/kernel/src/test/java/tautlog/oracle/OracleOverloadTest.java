package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tautlog.oracle.TenHertz.TEN_HERTZ;
import static tautlog.oracle.TenHertz.only;
import static tautlog.oracle.TenHertz.outing;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.fixtures.Rigs;
import tautlog.sample.HookupSource;

/** Cases worked out by hand, at {@link TenHertz}: overloads, and what the end stop makes a bound. */
class OracleOverloadTest {
    @Test
    void overloadAtTheEndStopIsAtLeastThatMuch() {
        // given
        OutingBuilder outing = outing().hold(9000, 2).samples(8_388_607).hold(9000, 2);

        // when, then
        assertEquals(
                List.of(new Finding.Overload(0, 4, 5, 8_388_607, "straight", true, true, false, false, true)),
                only(Finding.Overload.class, outing));
    }

    @Test
    void pullShockAndJoltAtTheEndStopAreAtLeastThatMuchAndOneCountBelowTheyAreNot() {
        // given slack in 0 and 1, p = 2 at the converter's end stop or a count below it, settled at 1000 N in 3–22 (20
        // samples);
        // 23 = the same height again: a jolt from 22; 24–52 loaded, so that the pull is the outing's rest
        for (int height : new int[] {8_388_607, 8_388_606}) {
            OutingBuilder outing = outing().hold(0, 2)
                    .samples(height)
                    .hold(1000, 20)
                    .samples(height)
                    .hold(2000, 29);
            boolean atLeast = height == 8_388_607;

            // when, then
            assertEquals(
                    List.of(new Finding.Shock(1, 2, 2, height, true, 2000, "straight", atLeast, false)),
                    only(Finding.Shock.class, outing));
            assertEquals(
                    List.of(new Finding.Jolt(22, 1000, 23, height, "straight", atLeast)),
                    only(Finding.Jolt.class, outing));
            assertEquals(
                    List.of(atLeast),
                    only(Finding.Pull.class, outing).stream()
                            .map(Finding.Pull::atLeast)
                            .toList());
        }
    }

    @Test
    void overloadOpensAboveTheLimitOnlyAndCountsSamplesAbove() {
        // given exactly the limit: none; then 8001, 7600 (= 0.95 L) four times, 7601, 8500, 7600 five times
        OutingBuilder outing = outing().hold(0, 1)
                .samples(8000, 8001)
                .hold(7600, 4)
                .samples(7601, 8500)
                .hold(7600, 5)
                .hold(0, 1);

        // when
        var overloads = only(Finding.Overload.class, outing);

        // then from 2 to 2 + 4 + 1 + 1 = 8, two samples above
        assertEquals(
                List.of(new Finding.Overload(2, 8, 2, 8500, "straight", true, false, false, false, false)), overloads);
    }

    @Test
    void changeOfHookupSplitsAnOverloadAndNamingItAgainDoesNot() {
        // given straight (8000) and thin (3000); 9000 N in samples 0–2, 2000 in 3; straight named again at 1, thin at 4
        OutingBuilder outing = OutingBuilder.inNewtons(
                        TEN_HERTZ,
                        Rigs.of("10000", List.of(Rigs.hookup("thin", "3000"), Rigs.hookup("straight", "8000"))))
                .hookup("straight", HookupSource.SELECTOR)
                .samples(9000)
                .hookup("straight", HookupSource.MARK)
                .samples(9000, 9000, 2000)
                .hookup("thin", HookupSource.MARK)
                .samples(3001, 3000);

        // when
        var overloads = only(Finding.Overload.class, outing);

        // then the first is split, not cut; the second is cut by the end
        assertEquals(
                List.of(
                        new Finding.Overload(0, 2, 3, 9000, "straight", false, false, false, false, false),
                        new Finding.Overload(4, 4, 1, 3001, "thin", false, false, false, false, true)),
                overloads);
    }
}
