package tautlog.desk.planning;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import tautlog.quantity.Angle;
import tautlog.rig.LoadedItem;

/**
 * One hookup at every whole degree between the lines at its blocks, as the angle closes.
 *
 * @param steps from 150 degrees to 0
 */
record BlockSweep(List<Step> steps) {
    /** Beyond it the rig takes no angle. */
    static final int WIDEST_DEGREES = 150;

    BlockSweep {
        steps = List.copyOf(steps);
    }

    /** The pull with the lines {@code degrees} apart. */
    record Step(int degrees, PlannedPull pull) {
        /** The greatest multiple of the line's tension at any fixed block or strap. */
        BigDecimal blockMultiple() {
            return pull.hookup().items().stream()
                    .filter(item -> item.turn().isPresent())
                    .map(LoadedItem::multiple)
                    .max(BigDecimal::compareTo)
                    .orElseThrow();
        }

        String governing() {
            return pull.hookup().limit().governing();
        }

        String breaksFirst() {
            return pull.full().breaksFirst().map(LoadedItem::gear).orElse("unknown");
        }
    }

    /** Neighbouring angles at which the same thing holds; {@code from} is the wider one. */
    record Stretch(int fromDegrees, int toDegrees, String word) {}

    /** @param pull of a hookup that turns the line */
    static BlockSweep of(PlannedPull pull) {
        return new BlockSweep(IntStream.rangeClosed(0, WIDEST_DEGREES)
                .map(closed -> WIDEST_DEGREES - closed)
                .mapToObj(degrees -> at(pull, degrees))
                .toList());
    }

    private static Step at(PlannedPull pull, int degrees) {
        return new Step(degrees, pull.with(pull.hookup().withBlockAngle(new Angle(BigDecimal.valueOf(degrees)))));
    }

    Step at(int degrees) {
        return steps.get(WIDEST_DEGREES - degrees);
    }

    /** Which item sets the limit from where to where. */
    List<Stretch> governing() {
        return stretches(Step::governing);
    }

    /** Of the items whose strength is known: which breaks first, from where to where. */
    List<Stretch> breaksFirst() {
        return stretches(Step::breaksFirst);
    }

    private List<Stretch> stretches(Function<Step, String> word) {
        List<Stretch> found = new ArrayList<>();
        for (Step step : steps) {
            String here = word.apply(step);
            int last = found.size() - 1;
            if (last >= 0 && found.get(last).word().equals(here)) {
                found.set(last, new Stretch(found.get(last).fromDegrees(), step.degrees(), here));
            } else {
                found.add(new Stretch(step.degrees(), step.degrees(), here));
            }
        }
        return found;
    }
}
