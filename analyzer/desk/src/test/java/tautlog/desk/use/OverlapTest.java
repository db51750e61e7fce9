package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;
import tautlog.usage.GearEvent;

/** Two outings of one winch that overlap in time though they are not the same: one of the clocks is wrong. */
class OverlapTest {
    @TempDir
    Path folder;

    private OutingUse first;
    private OutingUse second;

    @BeforeEach
    void twoOutingsTheSecondBegunWithinTheFirst() throws IOException {
        SampleDay.write(folder, "upper-landing_a.tautlog", 1, 0);
        SampleDay.write(folder, "upper-landing_b.tautlog", 2, 30);
        UseHistory history = UseHistory.of(List.of(folder), UseAgainstSlowTest.settings(1));
        assertTrue(history.notes().stream().anyMatch(note -> note.startsWith("OVERLAP")), history.notes()::toString);
        first = history.outings().get(0);
        second = history.outings().get(1);
    }

    @Test
    void timeThatIsLeftOutIsInNoMeter() {
        assertTrue(second.meters().pullHours() < first.meters().pullHours());
        assertEquals(30, second.coverage().logged().hours() * 3_600, 0.2);
    }

    @Test
    void anOverloadInTimeThatIsLeftOutIsToldAllTheSame() {
        List<Long> overloads = numbers(first);
        assertTrue(overloads.size() > 1, overloads::toString);

        assertEquals(overloads, numbers(second));
        assertEquals(
                first.machine().ofGear("choker").overloads(),
                second.machine().ofGear("choker").overloads());
        assertEquals(first.events().size(), second.events().size());
    }

    private static List<Long> numbers(OutingUse use) {
        return use.machine().ofGear("choker").events().stream()
                .map(GearEvent::number)
                .toList();
    }
}
