package tautlog.desk.service;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.random.RandomGenerator;

/** Ids of entries: when it was written, in UTC to the second, and 48 random bits: {@code 20260504T143005Z-7f3a9c2e1b04}. */
public final class EntryIds {
    private static final DateTimeFormatter SECOND =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final int RANDOM_BYTES = 6;

    private EntryIds() {}

    public static String next(Instant now, RandomGenerator random) {
        byte[] bits = new byte[RANDOM_BYTES];
        random.nextBytes(bits);
        return SECOND.format(now) + "-" + HexFormat.of().formatHex(bits);
    }

    /** The ids that {@code written} may mean: itself, else all that end in it. */
    public static List<String> meant(String written, Set<String> ids) {
        return ids.contains(written)
                ? List.of(written)
                : ids.stream().filter(id -> id.endsWith(written)).sorted().toList();
    }
}
