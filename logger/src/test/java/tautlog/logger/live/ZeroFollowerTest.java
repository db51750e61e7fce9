package tautlog.logger.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import net.jqwik.api.statistics.StatisticsReport.StatisticsReportMode;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Pull;
import tautlog.logger.config.ZeroChoice;
import tautlog.logger.live.FollowedLine.Frame;
import tautlog.logger.live.FollowedLine.Move;
import tautlog.sample.ZeroSource;

/** Section Zero of {@code FINDINGS.md}: following takes the cell's drift away and can hide no load greater than its bound. */
class ZeroFollowerTest {
    private static final int BOUND = FollowedLine.DRIFT_NEWTONS;

    @Test
    void followsADriftingCellToWithinTheDriftOfAStretch() {
        // given pulls with a minute of slack between, and a cell whose zero runs away by 3 N a minute
        FollowedLine line = new FollowedLine(ZeroChoice.FOLLOW);
        for (int i = 0; i < 40; i++) {
            line.pull(8_000, 20).drift(3).hold(0, 40);
        }
        // then
        assertTrue(line.moves().size() > 30, () -> line.moves().toString());
        assertTrue(Math.abs(line.lastShown()) <= 3 + 1, "shown " + line.lastShown() + " N");
        assertTrue(line.cellDrift() > 100);
        assertTrue(line.follower().isProven());
    }

    @Test
    void staysAtItsBoundWhenTheCellDriftsOn() {
        FollowedLine line = new FollowedLine(ZeroChoice.FOLLOW).pull(8_000, 20);
        for (int i = 0; i < 40; i++) {
            line.drift(10).hold(0, 30);
        }
        assertEquals(BOUND, line.shift(), 10);
        assertEquals(line.cellDrift() - line.shift(), line.lastShown(), 1);
        assertTrue(line.lastShown() >= 190, "what cannot be taken away is shown");
    }

    @Test
    void movesNothingWhenTheZeroIsFixedAndStillKnowsWhetherItIsProven() {
        FollowedLine line = new FollowedLine(ZeroChoice.FIXED).hold(0, 60);
        assertFalse(line.follower().isProven(), "before the first pull");
        line.pull(8_000, 20).drift(90).hold(0, 60);
        assertEquals(List.of(), line.moves());
        assertTrue(line.follower().isProven());
    }

    @Test
    void takesLogsThatHangOnTheLineForNoZero() {
        // given 600 N that are there from the start, and 300 N after a pull
        FollowedLine line = new FollowedLine(ZeroChoice.FOLLOW).hold(600, 120).pull(8_000, 20);
        line.hold(300, 600);
        assertEquals(List.of(), line.moves());
        assertEquals(300, line.lastShown(), 1);
    }

    /**
     * Slow ramps, steps, hung logs, pulls, drifts of the cell, noise, gaps and a mark button that is held, also under load, in
     * any order. Every count is compared with what is known of the line; every move with the plain definition, worked out from
     * the whole arrays. Most tries must move the zero, by both ways: without moves nothing could be hidden.
     */
    @Property(tries = 300)
    @StatisticsReport(StatisticsReportMode.OFF)
    void canHideNoRealLoad(@ForAll long seed, @ForAll @IntRange(min = 5, max = 60) int parts) {
        // given
        FollowedLine line = new FollowedLine(ZeroChoice.FOLLOW);
        Random random = new Random(seed);
        for (int i = 0; i < parts; i++) {
            part(line, random);
        }
        line.end();

        // then
        for (Frame frame : line.frames()) {
            double error = Math.abs(frame.shown() - frame.loadNewtons());
            double unfollowed = Math.abs(frame.raw() - frame.loadNewtons());
            assertTrue(error <= unfollowed + BOUND + 1e-6, () -> "at " + frame);
        }
        List<Pull> pulls = line.pulls();
        assertOften("by slack", line.moves().stream().anyMatch(move -> move.by() == ZeroSource.SLACK), 40);
        assertOften("by the button", line.moves().stream().anyMatch(move -> move.by() == ZeroSource.BUTTON), 20);
        assertOften("refused to the button", line.refusals() > 0, 15);
        for (Move move : line.moves()) {
            assertTrue(Math.abs(move.shift()) <= BOUND, move::toString);
            assertTrue(
                    pulls.stream().noneMatch(pull -> pull.startNumber() < move.at() && pull.endNumber() >= move.at()),
                    () -> move + " lies in a pull");
            assertTrue(
                    move.by() == ZeroSource.BUTTON
                            || pulls.stream().anyMatch(pull -> !pull.cutByGap() && pull.endNumber() < move.at()),
                    () -> move + " comes before the first pull has ended");
            line.assertProven(move);
        }
    }

    /** Over all tries. */
    private static void assertOften(String what, boolean happened, int leastPercent) {
        Statistics.label(what)
                .collect(happened)
                .coverage(cover -> cover.check(true).percentage(percent -> percent > leastPercent));
    }

    private static void part(FollowedLine line, Random random) {
        int seconds = 1 + random.nextInt(60);
        switch (random.nextInt(12)) {
            case 0, 1 -> line.pull(1_500 + random.nextInt(30_000), seconds);
            case 2 -> line.ramp(line.load(), random.nextInt(900) - 100, 10 * seconds);
            case 3 -> line.ramp(line.load(), random.nextInt(3_000), seconds);
            case 4 -> line.hold(random.nextInt(400), seconds);
            case 5, 6 -> line.ramp(line.load(), 0, 2).hold(0, seconds);
            case 7 -> line.drift(random.nextInt(81) - 40).hold(line.load(), seconds);
            case 8 ->
                line.noise(random.nextInt(random.nextBoolean() ? 20 : 300)).hold(line.load(), seconds);
            case 9 -> line.button(1 + random.nextInt(6));
            case 10 -> line.ramp(line.load(), random.nextInt(150), 3).button(4);
            default ->
                line.missing(random.nextInt(random.nextBoolean() ? 3 : 200)).hold(line.load(), seconds);
        }
    }
}
