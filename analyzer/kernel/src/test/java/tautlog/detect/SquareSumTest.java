package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;

class SquareSumTest {
    private static final int[] COUNTS = {Integer.MIN_VALUE, Integer.MAX_VALUE, -1, 0, 1, -8_388_608, 8_388_607, 65_536};

    @Test
    void isTheSumOfTheSquaresWhereALongOverflows() {
        // given
        SquareSum sum = new SquareSum();
        BigInteger plain = BigInteger.ZERO;

        // when
        for (int round = 0; round < 100; round++) {
            for (int count : COUNTS) {
                sum.add(count);
                plain = plain.add(BigInteger.valueOf(count).pow(2));
            }
        }

        // then
        assertEquals(plain, sum.total());
        assertEquals(true, plain.bitLength() > 63);
    }

    @Test
    void doublesWhenItIsAddedToItselfThirtyTimesOver() {
        SquareSum sum = new SquareSum();
        for (int count : COUNTS) {
            sum.add(count);
        }
        BigInteger plain = sum.total();
        for (int k = 0; k < 30; k++) {
            SquareSum same = new SquareSum();
            same.add(sum);
            sum.add(same);
            plain = plain.shiftLeft(1);
            assertEquals(plain, sum.total());
        }
        sum.clear();
        assertEquals(BigInteger.ZERO, sum.total());
    }
}
