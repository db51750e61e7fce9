package tautlog.desk.analysis;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tautlog.sample.QuietEvidence;

/** Picks the counts of some samples out of a replay. */
final class CountLookup extends QuietEvidence {
    private final long[] wanted;
    private final Map<Long, Integer> found = new HashMap<>();

    CountLookup(List<Long> numbers) {
        wanted = numbers.stream().mapToLong(Long::longValue).sorted().distinct().toArray();
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        int at = Arrays.binarySearch(wanted, number);
        for (int i = at >= 0 ? at : -at - 1; i < wanted.length && wanted[i] < number + n; i++) {
            found.put(wanted[i], counts[from + (int) (wanted[i] - number)]);
        }
    }

    int countAt(long number) {
        Integer count = found.get(number);
        if (count == null) {
            throw new IllegalStateException("sample " + number + " was not told");
        }
        return count;
    }
}
