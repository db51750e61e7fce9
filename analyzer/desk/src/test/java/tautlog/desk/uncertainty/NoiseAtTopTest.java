package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class NoiseAtTopTest {
    @Test
    void oneReadingIsANormalOne() {
        // 95 % point of the normal distribution, any printed table
        assertEquals(1.645, new NoiseAtTop(1).quantile(0.95), 0.0005);
        assertEquals(-1.645, new NoiseAtTop(1).quantile(0.05), 0.0005);
    }

    @Test
    void theGreatestOfTwoHasTheSquareOfTheDistribution() {
        // Φ(0) = 0.5, any printed table: below 0 are both of two with 0.25
        assertEquals(0, new NoiseAtTop(2).quantile(0.25), 1e-12);
    }

    @Test
    void aReadingThatStandsOutIsAlone() {
        // given steps of half a deviation; the next readings lie 3 deviations below
        assertEquals(1, NoiseAtTop.asHigh(new long[] {1, 1, 1, 1, 1, 1, 200, 200}, 2, 200));
    }

    @Test
    void halfOfTheEquallyHighOnesLieAboveTheirHeight() {
        // given 20 within 2.5 deviations: 39 equal ones reach 3.0 (Φ(3.0)^39 = 0.949), not 2.5
        assertEquals(39, NoiseAtTop.asHigh(new long[] {2, 4, 8, 14, 20, 20, 20}, 2, 200), 0.001);
    }

    @Test
    void neverMoreThanThereAre() {
        assertEquals(7, NoiseAtTop.asHigh(new long[] {7, 7, 7, 7, 7, 7, 7}, 2, 7));
    }
}
