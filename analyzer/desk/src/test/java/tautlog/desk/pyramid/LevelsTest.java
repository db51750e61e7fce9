package tautlog.desk.pyramid;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LevelsTest {
    /** Levels that were asked for must not be stale when the last bucket got more, also at the end of a group of eight. */
    @Test
    void everyLevelIsRightAfterEveryValue() {
        Levels levels = new Levels();
        List<Integer> least = new ArrayList<>();
        List<Integer> greatest = new ArrayList<>();
        Random random = new Random(3);
        for (int i = 0; i < 400; i++) {
            if (least.isEmpty() || random.nextInt(3) == 0) {
                levels.append(i);
                least.add(Integer.MAX_VALUE);
                greatest.add(Integer.MIN_VALUE);
            }
            int value = random.nextInt();
            int last = least.size() - 1;
            levels.add(value, value, 1);
            least.set(last, Math.min(least.get(last), value));
            greatest.set(last, Math.max(greatest.get(last), value));
            for (int level = 0, width = 1; level < levels.levels(); level++, width *= Levels.FAN) {
                for (int bucket = 0; bucket < levels.buckets(level); bucket++) {
                    int from = bucket * width;
                    int to = Math.min(least.size(), from + width);
                    assertEquals(
                            least.subList(from, to).stream()
                                    .min(Integer::compare)
                                    .orElseThrow(),
                            levels.least(level, bucket));
                    assertEquals(
                            greatest.subList(from, to).stream()
                                    .max(Integer::compare)
                                    .orElseThrow(),
                            levels.greatest(level, bucket));
                }
            }
        }
    }
}
