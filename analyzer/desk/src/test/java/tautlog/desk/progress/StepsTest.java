package tautlog.desk.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class StepsTest {
    @Test
    void countsThingsAndTheirSizesInTheOrderInWhichTheyAreReady() {
        List<Sofar> told = new ArrayList<>();
        Steps steps = Steps.of("files", List.of("a", "four", "seventh"), String::length, told::add);

        steps.done(2);
        steps.done(0);
        steps.done(1);

        assertEquals(
                List.of(
                        new Sofar("files", 1, 3, 7, 12),
                        new Sofar("files", 2, 3, 8, 12),
                        new Sofar("files", 3, 3, 12, 12)),
                told);
    }

    @Test
    void asksForNoSizeWhereNobodyLooksOn() {
        Steps steps = Steps.of(
                "files",
                List.of("a"),
                thing -> {
                    throw new AssertionError("asked");
                },
                Progress.SILENT);

        steps.done(0);
    }
}
