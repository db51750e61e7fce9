package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiPredicate;
import tautlog.detect.Finding;
import tautlog.detect.Second;

/**
 * What two implementations of the page do not agree on.
 *
 * <p>Everything is compared exactly but shaft speeds and shares, which are doubles: those to one part in 10⁹, because a mean
 * and a quotient may be rounded more than once (chosen: far above rounding, far below anything a wrong sample could cause).
 */
final class Difference {
    private static final double ROUNDING = 1e-9;

    private Difference() {}

    /** Empty when they agree; else one line for each thing that only one of them says. */
    static List<String> between(Answers oracle, Answers detectors) {
        List<String> lines = new ArrayList<>();
        compare("finding", oracle.findings(), detectors.findings(), Difference::same, lines);
        compare("second", oracle.seconds(), detectors.seconds(), Difference::same, lines);
        compare("cycle", oracle.cycles(), detectors.cycles(), Answers.Cycle::equals, lines);
        compare("reading", oracle.readings(), detectors.readings(), Difference::same, lines);
        compare("interval", oracle.intervals(), detectors.intervals(), Difference::same, lines);
        return lines;
    }

    private static <T> void compare(
            String what, List<T> oracle, List<T> detectors, BiPredicate<T, T> same, List<String> lines) {
        List<T> unmatched = new ArrayList<>(detectors);
        for (T expected : oracle) {
            int match = 0;
            while (match < unmatched.size() && !same.test(expected, unmatched.get(match))) {
                match++;
            }
            if (match < unmatched.size()) {
                unmatched.remove(match);
            } else {
                lines.add(what + " of the oracle only:    " + expected);
            }
        }
        unmatched.forEach(found -> lines.add(what + " of the detectors only: " + found));
    }

    private static boolean same(Finding a, Finding b) {
        if (a instanceof Finding.Stall x && b instanceof Finding.Stall y) {
            return near(x.leastRpm(), y.leastRpm())
                    && near(x.baselineRpm(), y.baselineRpm())
                    && withoutSpeeds(x).equals(withoutSpeeds(y));
        }
        return a.equals(b);
    }

    private static Finding.Stall withoutSpeeds(Finding.Stall s) {
        return new Finding.Stall(s.startNumber(), s.startTick(), s.endTick(), s.ended(), 0, 0, s.counts());
    }

    private static boolean same(Second a, Second b) {
        return a.shaftRpm().isPresent() == b.shaftRpm().isPresent()
                && near(a.shaftRpm().orElse(0), b.shaftRpm().orElse(0))
                && near(a.share(), b.share())
                && withoutDoubles(a).equals(withoutDoubles(b));
    }

    private static Second withoutDoubles(Second s) {
        return new Second(
                s.index(),
                s.firstNumber(),
                s.least(),
                s.greatest(),
                s.countSum(),
                s.samples(),
                OptionalDouble.empty(),
                s.hookup(),
                0,
                s.flags(),
                s.countSquares());
    }

    private static boolean same(Answers.Reading a, Answers.Reading b) {
        return a.tick() == b.tick() && near(a.rpm(), b.rpm());
    }

    private static boolean same(Answers.Interval a, Answers.Interval b) {
        return a.ticks() == b.ticks()
                && near(a.rpm(), b.rpm())
                && a.samples() == b.samples()
                && a.greatest() == b.greatest()
                && a.clutch() == b.clutch();
    }

    private static boolean near(double a, double b) {
        return Math.abs(a - b) <= ROUNDING * Math.max(1e-6, Math.max(Math.abs(a), Math.abs(b)));
    }
}
