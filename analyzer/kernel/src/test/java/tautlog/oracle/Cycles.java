package tautlog.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import tautlog.detect.Finding;

/** The paragraph Rainflow. */
final class Cycles {
    private final Line line;

    Cycles(Line line) {
        this.line = line;
    }

    /** "Each pull is one history, from its start to its end sample." */
    List<Answers.Cycle> of(Finding.Pull pull) {
        return count(points(line.placeOf(pull.startNumber()), line.placeOf(pull.endNumber())), line::range);
    }

    private boolean isGateAbove(int high, int low) {
        BigDecimal gate = line.settings.cycleGate().multiply(line.ratedPull);
        return line.compareDifference(line.count[high], line.count[low], gate) >= 0;
    }

    /** The Read as of the paragraph, up to "are points", as counts. */
    private List<Integer> points(int start, int end) {
        List<Integer> points = new ArrayList<>(List.of(line.count[start]));
        int least = start;
        int greatest = start;
        int direction = 0;
        int extremum = start;
        for (int i = start; i <= end; i++) {
            if (direction == 0) {
                least = line.count[i] < line.count[least] ? i : least;
                greatest = line.count[i] > line.count[greatest] ? i : greatest;
                int turn = isGateAbove(i, least) ? least : isGateAbove(greatest, i) ? greatest : -1;
                if (turn >= 0) {
                    direction = turn == least ? 1 : -1;
                    if (turn != start) {
                        points.add(line.count[turn]);
                    }
                    extremum = i;
                }
            } else if (direction * Integer.compare(line.count[i], line.count[extremum]) > 0) {
                extremum = i;
            } else if (direction > 0 ? isGateAbove(extremum, i) : isGateAbove(i, extremum)) {
                points.add(line.count[extremum]);
                direction = -direction;
                extremum = i;
            }
        }
        if (direction != 0) {
            addIfOther(points, line.count[extremum]);
        }
        addIfOther(points, line.count[end]);
        return points;
    }

    private static void addIfOther(List<Integer> points, int count) {
        if (points.get(points.size() - 1) != count) {
            points.add(count);
        }
    }

    /** ASTM E1049-85, 5.4.4, as the Read as puts it. */
    static List<Answers.Cycle> count(List<Integer> points) {
        return count(points, (a, b) -> Math.abs((double) a - b));
    }

    private static List<Answers.Cycle> count(List<Integer> points, ToDoubleBiFunction<Integer, Integer> range) {
        List<Answers.Cycle> cycles = new ArrayList<>();
        List<Integer> left = new ArrayList<>();
        for (int point : points) {
            left.add(point);
            while (left.size() >= 3) {
                int c = left.size() - 1;
                double x = range.applyAsDouble(left.get(c), left.get(c - 1));
                double y = range.applyAsDouble(left.get(c - 1), left.get(c - 2));
                if (x < y) {
                    break;
                }
                boolean holdsFirst = c - 2 == 0;
                cycles.add(cycle(left.get(c - 2), left.get(c - 1), holdsFirst ? 1 : 2));
                left.remove(c - 2);
                if (!holdsFirst) {
                    left.remove(c - 2);
                }
            }
        }
        for (int i = 1; i < left.size(); i++) {
            cycles.add(cycle(left.get(i - 1), left.get(i), 1));
        }
        return cycles;
    }

    private static Answers.Cycle cycle(int a, int b, int halves) {
        return new Answers.Cycle(Math.abs((long) a - b), (long) a + b, halves);
    }
}
