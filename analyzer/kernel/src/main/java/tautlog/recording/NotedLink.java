package tautlog.recording;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A link of a recording's chain that was written down elsewhere, to hold the recording against it later. As text: {@code
 * 2026-05-04T17:03:12Z upper-landing_2026-05-04.tautlog <64 hexadecimal characters>}.
 *
 * @param at when it was noted, by the clock of who noted it
 * @param file the recording's name then, without its folder
 * @param link 64 lower-case hexadecimal characters
 */
public record NotedLink(Instant at, String file, String link) {
    private static final Pattern LINK = Pattern.compile("[0-9a-f]{64}");

    public NotedLink {
        at = at.truncatedTo(ChronoUnit.SECONDS);
        if (file.isEmpty() || file.chars().anyMatch(Character::isWhitespace)) {
            throw new IllegalArgumentException("a recording's name has no white space, was '" + file + "'");
        }
        if (!LINK.matcher(link).matches()) {
            throw new IllegalArgumentException("a link is 64 lower-case hexadecimal characters, was '" + link + "'");
        }
    }

    /** Its line, without an end. */
    public String line() {
        return at + "  " + file + "  " + link;
    }

    /** The link that stands in {@code line}; empty for a remark, an empty or a torn line. */
    public static Optional<NotedLink> in(String line) {
        String[] words = line.strip().split("\\s+", -1);
        if (words.length != 3 || !LINK.matcher(words[2]).matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new NotedLink(Instant.parse(words[0]), words[1], words[2]));
        } catch (DateTimeException noTime) {
            return Optional.empty();
        }
    }
}
