package tautlog.desk.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import biweekly.Biweekly;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

/** Lines of RFC 5545, against its examples and a parser that is not ours. */
class CalendarTextTest {
    @Test
    void escapesAsTheStandardsOwnExampleDoes() {
        // RFC 5545, 3.3.11
        assertEquals(
                "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.",
                CalendarText.escaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared."));
        // RFC 5545, 3.8.1.5, the example's last clause
        assertEquals(
                "report\\, Participants: John Smith\\, Jane Doe\\, Jim Dandy",
                CalendarText.escaped("report, Participants: John Smith, Jane Doe, Jim Dandy"));
        assertEquals("a\\\\b\\;c\\nd", CalendarText.escaped("a\\b;c\r\nd\u0007\r"));
    }

    @Test
    void foldsBeforeThe76thOctetAndUnfoldsToTheSame() {
        // RFC 5545, 3.1: the long line of the example unfolds to one line
        String description = "This is a long description that exists on a long line.";

        String folded =
                new CalendarText().text("DESCRIPTION", description.repeat(2)).toString();

        assertEquals("DESCRIPTION:" + description.repeat(2) + "\r\n", folded.replace("\r\n ", ""));
        assertEquals(75, folded.indexOf("\r\n"));
    }

    @Test
    void neverBreaksAmidACharacter() {
        for (int n = 55; n < 75; n++) {
            String text = "x".repeat(n) + "ü€\uD83D\uDE9C".repeat(40);

            String folded = new CalendarText().line("X", text).toString();

            assertEquals("X:" + text + "\r\n", folded.replace("\r\n ", ""));
            assertTrue(Arrays.stream(folded.split("\r\n"))
                    .allMatch(line -> line.getBytes(StandardCharsets.UTF_8).length <= 75));
            assertTrue(folded.lines().noneMatch(line -> line.contains("?") || line.contains("\uFFFD")));
            // a half character would become a question mark here
            assertEquals(folded, new String(folded.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
        }
    }

    @Property(tries = 200)
    void aParserReadsBackEveryText(@ForAll @StringLength(max = 300) String any) {
        String text = any.replaceAll("[\\p{Cntrl}&&[^\n]]|[\\uD800-\\uDFFF]|[\\u0085\\u2028\\u2029]", "");
        String calendar = new CalendarText()
                .line("BEGIN", "VCALENDAR")
                .line("VERSION", "2.0")
                .line("PRODID", "-//Tautlog//test//EN")
                .line("BEGIN", "VEVENT")
                .line("UID", "1")
                .text("SUMMARY", text)
                .line("END", "VEVENT")
                .line("END", "VCALENDAR")
                .toString();

        String read =
                Biweekly.parse(calendar).first().getEvents().get(0).getSummary().getValue();

        // the parser gives line feeds as the system's
        assertEquals(text, read.replace(System.lineSeparator(), "\n"));
    }
}
