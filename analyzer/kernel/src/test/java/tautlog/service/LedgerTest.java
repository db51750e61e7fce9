package tautlog.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** What lines say, however they came to stand there. */
class LedgerTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");
    private static final ZoneId ZONE = ZoneId.of("America/Halifax");

    private static Ledger read(String... lines) {
        return read(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }

    private static Ledger read(byte[] bytes) {
        return Ledger.read("ledger.jsonl", bytes, ZONE, NOW);
    }

    private static String done(String id, String at, String more) {
        return "{\"id\":\"" + id + "\",\"kind\":\"done\",\"at\":\"" + at + "\",\"task\":\"joint-crosses\"" + more + "}";
    }

    private static List<String> ids(Ledger ledger) {
        return ledger.entries().stream().map(Entry::id).toList();
    }

    private static List<String> complaints(Ledger ledger) {
        return ledger.complaints().stream().map(Complaint::toString).toList();
    }

    @Test
    void readsBackEveryKindOfEntryThatItWrites() {
        Instant at = Instant.parse("2026-05-04T14:30:00Z");
        GearPiece red = new GearPiece("choker", Optional.of("red"));
        List<Act> acts = List.of(
                new Act.Done("joint-crosses"),
                new Act.Inspected(
                        red,
                        Verdict.STAYS_OUT,
                        Map.of("broken_wires_in_lay", new BigDecimal("3"), "diameter_mm", new BigDecimal("10.7")),
                        List.of("kink", "Rost, \"tief\"")),
                new Act.Fitted(red),
                new Act.Retired(new GearPiece("choker", Optional.empty())),
                new Act.OutOfService(red),
                new Act.Worked(
                        at.minusSeconds(7200),
                        at,
                        Optional.of(new BigDecimal("1.5")),
                        Optional.empty(),
                        Optional.of(new BigDecimal("20"))),
                new Act.Withdrawn());
        for (Act act : acts) {
            Entry entry = new Entry(
                    "a-1",
                    at,
                    at.plusSeconds(9),
                    Optional.of("Wren"),
                    Optional.of("upper-landing"),
                    Optional.of("line one\nline two \u2028 <ü>"),
                    Optional.of("a-0"),
                    act);

            String line = EntryLine.of(entry);

            assertTrue(line.startsWith("{\"id\":") && line.lines().count() == 1, line);
            LedgerLines.Part part =
                    LedgerLines.in(line.getBytes(StandardCharsets.UTF_8)).get(0);
            EntryReader.Said said = EntryReader.read(part.object().orElseThrow(), ZONE);
            assertEquals(List.of(), said.problems());
            assertEquals(List.of(), said.remarks());
            assertEquals(entry, said.entry().orElseThrow());
        }
    }

    @Test
    void takesHandEditedFilesWithBomCarriageReturnsBlankLinesCommentsAndWithoutALastLineFeed() {
        Ledger ledger = read(
                "\uFEFF# ours\r",
                "\r",
                "  " + done("b", "2026-05-05", "") + " \r",
                "   # a remark",
                "\uFEFF" + done("a", "2026-05-04T07:00:00", ""));

        assertEquals(List.of("a", "b"), ids(ledger));
        assertEquals(List.of(), ledger.complaints());
        // Halifax is three hours behind UTC in May; a day alone is its beginning
        assertEquals(
                Instant.parse("2026-05-04T10:00:00Z"), ledger.entries().get(0).at());
        assertEquals(
                Instant.parse("2026-05-05T03:00:00Z"), ledger.entries().get(1).at());
    }

    @Test
    void namesEveryBadLineWithEveryProblemAndKeepsTheOthers() {
        Ledger ledger = read(
                done("a", "2026-05-04T07:00:00Z", ""),
                "greased the crosses",
                "{\"id\":\"b\",\"kind\":\"don\",\"at\":\"yesterday\"}",
                "{\"id\":\"c\",\"kind\":\"inspected\",\"at\":\"2026-05-04\",\"gear\":\"rope\",\"result\":\"fine\",\"broken_wires_in_lay\":2.5}",
                "{\"id\":\"d\",\"kind\":\"worked\",\"from\":\"2026-05-04\",\"to\":\"2026-05-04\",\"shaft_h\":\"3\",\"pull_h\":25}",
                "[1]",
                "{\"id\":\"e\",\"schema\":2,\"kind\":\"withdrawn\",\"at\":\"2026-05-04\"}",
                done("f", "2026-05-04T07:00:00Z", ""));

        assertEquals(List.of("a", "f"), ids(ledger));
        assertEquals(
                List.of(
                        "ledger.jsonl:2: this is no entry: greased the crosses.",
                        "ledger.jsonl:3: \"kind\" is \"don\", which is not known here. Did you mean \"done\"? Allowed: done,"
                                + " fitted, inspected, out-of-service, retired, withdrawn, worked; \"at\" is not a time"
                                + " (\"yesterday\"). Write \"2026-05-04T12:30:00Z\", \"2026-05-04T14:30:00\" (local) or"
                                + " \"2026-05-04\"..",
                        "ledger.jsonl:4: \"by\" is missing; \"result\" is \"fine\", which is not known here. Allowed:"
                                + " back-in-service, scrap, stays-out; \"broken_wires_in_lay\" is not a whole number.",
                        "ledger.jsonl:5: \"shaft_h\" is not a number from 0, without quotes and with a point; \"pull_h\" is"
                                + " more than lies between \"from\" and \"to\".",
                        "ledger.jsonl:6: this is no entry: [1].",
                        "ledger.jsonl:7: \"schema\" is of a newer Tautlog; \"replaces\" is missing."),
                ledger.complaints().stream()
                        .map(complaint ->
                                complaint.toString().lines().findFirst().orElseThrow())
                        .toList());
        assertTrue(ledger.complaints().stream().allMatch(c -> c.weight() == Complaint.Weight.IGNORED));
    }

    @Test
    void tellsAKeyThatItDoesNotKnowAndCountsTheEntry() {
        Ledger ledger = read(done("a", "2026-05-04T07:00:00Z", ",\"notte\":\"grease\",\"colour\":1"));

        assertEquals(List.of("a"), ids(ledger));
        assertEquals(
                List.of(
                        "ledger.jsonl:1: \"notte\" is not a known key; it stays in the file and is not used. Did you mean"
                                + " \"note\"?.",
                        "ledger.jsonl:1: \"colour\" is not a known key; it stays in the file and is not used."),
                complaints(ledger));
    }

    @Test
    void countsALineThatStandsThereTwiceOnce() {
        String worked =
                "{\"id\":\"w\",\"kind\":\"worked\",\"from\":\"2026-05-04\",\"to\":\"2026-05-04\",\"shaft_h\":3}";

        Ledger ledger = read(
                worked,
                done("a", "2026-05-04T07:00:00Z", ""),
                worked,
                "{\"kind\":\"worked\"," + worked.substring(1).replace(",\"kind\":\"worked\"", ""));

        assertEquals(List.of("a", "w"), ids(ledger));
        assertEquals(List.of(), ledger.complaints());
    }

    @Test
    void ofOneIdWithTwoContentsCountsWhatWarnsAndNotWhatReassures() {
        String day = "{\"id\":\"w\",\"kind\":\"worked\",\"from\":\"2026-05-04\",\"to\":\"2026-05-04\",\"shaft_h\":";

        Ledger ledger = read(
                done("a", "2026-05-04T07:00:00Z", ""), done("a", "2026-05-05T07:00:00Z", ""), day + "3}", day + "4}");

        assertEquals(List.of("w", "w"), ids(ledger));
        assertEquals(4, ledger.complaints().size());
        assertEquals(
                "ledger.jsonl:1: \"a\" stands here with other content than on line 2; neither counts.\n"
                        + "  Which is right? Give the other an id of its own, or put # before it.",
                ledger.complaints().get(0).toString());
        assertTrue(ledger.complaints().get(2).found().endsWith("both count"));
    }

    @Test
    void letsTheLastCorrectionHoldAlsoWhenAClockWasWrong() {
        Ledger ledger = read(
                done("b", "2026-05-05T07:00:00Z", ",\"replaces\":\"a\",\"written\":\"2020-01-01\""),
                done("a", "2026-05-04T07:00:00Z", ",\"written\":\"2026-05-04\""),
                done("d", "2026-05-07T07:00:00Z", ",\"replaces\":\"a\",\"written\":\"2026-05-08\""),
                done("c", "2026-05-06T07:00:00Z", ",\"replaces\":\"b\",\"written\":\"2026-05-06\""),
                done("x", "2026-05-04T07:00:00Z", ""),
                "{\"id\":\"y\",\"kind\":\"withdrawn\",\"at\":\"2026-05-06\",\"replaces\":\"x\"}");

        assertEquals(List.of("d"), ids(ledger));
        assertEquals(List.of(), ledger.complaints());
    }

    @Test
    void survivesEntriesThatReplaceEachOtherAndThoseThatReplaceNothing() {
        Ledger ledger = read(
                done("a", "2026-05-04T07:00:00Z", ",\"replaces\":\"b\""),
                done("b", "2026-05-05T07:00:00Z", ",\"replaces\":\"a\""),
                done("c", "2026-05-06T07:00:00Z", ",\"replaces\":\"lost\""));

        assertEquals(List.of("b", "c"), ids(ledger));
        assertEquals(
                "it replaces \"lost\", which is not in this ledger",
                ledger.complaints().get(0).found());
    }

    @Test
    void doesNotBelieveYetWhatReassuresAndIsStillToCome() {
        Ledger ledger = read(
                done("a", "2027-05-04T07:00:00Z", ""),
                "{\"id\":\"o\",\"kind\":\"out-of-service\",\"at\":\"2027-05-04\",\"gear\":\"choker\"}");

        assertEquals(List.of("o"), ids(ledger));
        assertEquals(
                "its time 2027-05-04T07:00:00Z is still to come; it does not count until then",
                ledger.complaints().get(0).found());
    }

    private static String out(String id, String more) {
        return "{\"id\":\"" + id + "\",\"kind\":\"out-of-service\",\"at\":\"2026-05-04\",\"gear\":\"choker\"" + more
                + "}";
    }

    private static String inspected(String id, String at, String more) {
        return "{\"id\":\"" + id + "\",\"kind\":\"inspected\",\"at\":\"" + at
                + "\",\"by\":\"Wren\",\"gear\":\"choker\",\"result\":\"back-in-service\"" + more + "}";
    }

    private static String withdrawn(String id, String at, String replaces) {
        return "{\"id\":\"" + id + "\",\"kind\":\"withdrawn\",\"at\":\"" + at + "\",\"replaces\":\"" + replaces + "\"}";
    }

    private static List<String> found(Ledger ledger) {
        return ledger.complaints().stream().map(Complaint::found).toList();
    }

    @Test
    void anEntryThatIsStillToComeTakesBackNothingThatWarns() {
        Ledger withdrawn = read(out("o", ""), withdrawn("w", "2027-05-04T07:00:00Z", "o"));
        Ledger corrected = read(out("o", ""), inspected("i", "2027-05-04T07:00:00Z", ",\"replaces\":\"o\""));

        assertEquals(List.of("o"), ids(withdrawn));
        assertEquals(List.of("o"), ids(corrected));
        String until = "its time 2027-05-04T07:00:00Z is still to come; it does not count until then; what it corrects"
                + " counts until then";
        assertEquals(List.of(until), found(withdrawn));
        assertEquals(List.of(until), found(corrected));
        assertEquals(Map.of(), withdrawn.withdrawn());
    }

    @Test
    void anEntryThatIsStillToComePutsInDoubtWhatReassures() {
        Ledger ledger = read(inspected("i", "2026-05-04T07:00:00Z", ""), withdrawn("w", "2027-05-04T07:00:00Z", "i"));

        assertEquals(List.of(), ids(ledger));
        assertEquals(
                List.of("its time 2027-05-04T07:00:00Z is still to come; it does not count until then, nor does what it"
                        + " corrects any more"),
                found(ledger));
    }

    @Test
    void anEntryThatWasWithdrawnStaysSoWhateverStillComes() {
        Ledger ledger = read(
                out("o", ""), withdrawn("w", "2026-05-05T07:00:00Z", "o"), withdrawn("v", "2027-05-04T07:00:00Z", "o"));

        assertEquals(List.of(), ids(ledger));
    }

    /** Ids that count, and what is found of the lines, whatever their order. */
    private static void inEachOrder(
            List<String> counting, Set<String> found, String one, String other, String... more) {
        List<String> forth = new ArrayList<>(List.of(one, other));
        List<String> back = new ArrayList<>(List.of(other, one));
        forth.addAll(List.of(more));
        back.addAll(0, List.of(more));
        for (List<String> lines : List.of(forth, back)) {
            Ledger ledger = read(lines.toArray(String[]::new));
            assertEquals(counting, ids(ledger), lines::toString);
            Set<String> told = new TreeSet<>();
            found(ledger).forEach(sentence -> told.add(sentence.replaceAll("on line \\d", "on line N")));
            assertEquals(found, told, lines::toString);
            assertEquals(Map.of(), ledger.withdrawn());
        }
    }

    private static final String OTHER_CONTENT = "\"x\" stands here with other content than on line N; ";
    private static final String PAST = "2026-05-05T07:00:00Z";
    private static final String FUTURE = "2027-05-05T07:00:00Z";

    @Test
    void anIdThatBothReassuresAndTakesBackIsAConflictInWhichNeitherCounts() {
        inEachOrder(
                List.of(),
                Set.of(OTHER_CONTENT + "neither counts"),
                inspected("x", PAST, ",\"replaces\":\"o\""),
                withdrawn("x", PAST, "o"),
                out("o", ""));
        inEachOrder(
                List.of("o"),
                Set.of(OTHER_CONTENT + "neither counts, and what it may correct counts"),
                inspected("x", PAST, ""),
                withdrawn("x", PAST, "o"),
                out("o", ""));
    }

    @Test
    void anIdThatBothWarnsAndTakesBackIsAConflictInWhichWhatWarnsCounts() {
        String worked = worked("w", "2026-05-01", "2026-05-02", "");
        inEachOrder(
                List.of("x"),
                Set.of(OTHER_CONTENT + "this one counts", OTHER_CONTENT + "this one does not count"),
                out("x", ",\"replaces\":\"w\""),
                withdrawn("x", PAST, "w"),
                worked);
        inEachOrder(
                List.of("w", "x"),
                Set.of(
                        OTHER_CONTENT + "this one counts, and what it may correct counts",
                        OTHER_CONTENT + "this one does not count, and what it may correct counts"),
                out("x", ""),
                withdrawn("x", PAST, "w"),
                worked);
    }

    @Test
    void anIdThatTakesBackBothNowAndInTheFutureTakesBackNothingThatWarns() {
        inEachOrder(
                List.of("o"),
                Set.of(OTHER_CONTENT + "neither counts, and what it may correct counts"),
                withdrawn("x", PAST, "o"),
                withdrawn("x", FUTURE, "o"),
                out("o", ""));
    }

    @Test
    void correctionsOfTheFutureThatStandOnEachOtherTakeBackNothingThatWarns() {
        String b = inspected("b", FUTURE, ",\"replaces\":\"a\"");
        String c = inspected("c", FUTURE, ",\"replaces\":\"b\"");
        for (List<String> lines : List.of(
                List.of(out("a", ""), b, c),
                List.of(out("a", ""), b, withdrawn("c", FUTURE, "b")),
                List.of(out("a", ""), b, c, inspected("d", FUTURE, ",\"replaces\":\"c\"")),
                List.of(out("a", ""), b, c, withdrawn("d", FUTURE, "c")))) {
            Ledger ledger = read(lines.toArray(String[]::new));

            assertEquals(List.of("a"), ids(ledger), lines::toString);
            assertEquals(
                    Set.of("its time " + FUTURE + " is still to come; it does not count until then; what it corrects"
                            + " counts until then"),
                    Set.copyOf(found(ledger)));
            assertEquals(lines.size() - 1, ledger.complaints().size());
            assertEquals(Map.of(), ledger.withdrawn());
        }
    }

    @Test
    void remarksThatAnEntryCorrectsWhatWasTakenBack() {
        Ledger ledger = read(
                done("a", "2026-05-04T07:00:00Z", ""),
                withdrawn("w", "2026-05-05T07:00:00Z", "a"),
                done("b", "2026-05-06T07:00:00Z", ",\"replaces\":\"a\""));

        assertEquals(List.of("b"), ids(ledger));
        assertEquals(List.of("it corrects what \"w\" took back: it counts all the same"), found(ledger));
        assertEquals(3, ledger.complaints().get(0).line());
    }

    @Test
    void saysByWhichEntryWhatWasTakenBack() {
        Ledger ledger = read(
                done("a", "2026-05-04T07:00:00Z", ""),
                done("b", "2026-05-05T07:00:00Z", ",\"replaces\":\"a\""),
                withdrawn("w", "2026-05-06", "b"),
                done("c", "2026-05-07T07:00:00Z", ""));

        assertEquals(Map.of("a", "w", "b", "w", "w", "w"), ledger.withdrawn());
    }

    @Test
    void remarksThatNobodySaysWhoFittedGearUntilItIsCorrected() {
        String nameless = "{\"id\":\"f\",\"kind\":\"fitted\",\"at\":\"2026-05-04\",\"gear\":\"choker\"}";
        String named = nameless.replace("\"f\"", "\"g\"").replace("}", ",\"by\":\"Wren\",\"replaces\":\"f\"}");

        assertEquals(
                List.of("it does not say who fitted it: it puts no gear back into service"), found(read(nameless)));
        assertEquals(List.of("f"), ids(read(nameless)));
        assertEquals(List.of(), found(read(nameless, named)));
    }

    private static String worked(String id, String from, String to, String more) {
        return "{\"id\":\"" + id + "\",\"kind\":\"worked\",\"from\":\"" + from + "\",\"to\":\"" + to
                + "\",\"shaft_h\":1" + more + "}";
    }

    @Test
    void findsWorkThatMayHaveBeenEnteredTwice() {
        Ledger ledger = read(
                worked("a", "2026-05-04", "2026-05-06", ",\"winch\":\"upper-landing\""),
                worked("b", "2026-05-06T08:00:00Z", "2026-05-07T08:00:00Z", ",\"winch\":\"upper-landing\""),
                worked("c", "2026-05-07T08:00:00Z", "2026-05-07T09:00:00Z", ",\"winch\":\"upper-landing\""),
                worked("d", "2026-05-04", "2026-05-09", ",\"winch\":\"hillside\""),
                worked("e", "2026-05-09", "2026-05-09", ""),
                worked("f", "2026-05-04", "2026-05-09", ",\"winch\":\"hilside\""));

        List<String> twice = WorkedTwice.in(ledger, Set.of("upper-landing", "hillside")).stream()
                .map(pair -> pair.one().id() + pair.other().id())
                .toList();

        assertEquals(
                List.of("ab", "de"),
                twice); // where b ends c begins; d is of another winch; e may be of d's; f counts for none
    }

    @Test
    void refusesWorkThatIsLongerThanItsSpanToTheNanosecond() {
        Instant from = Instant.parse("2026-05-04T07:00:00Z");
        BigDecimal hour = new BigDecimal("1");

        assertTrue(Act.Worked.fits(hour, from, from.plusSeconds(3_600)));
        assertFalse(Act.Worked.fits(hour, from, from.plusSeconds(3_600).minusNanos(1)));
        assertFalse(Act.Worked.fits(hour.negate(), from, from.plusSeconds(3_600)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Act.Worked(from, from, Optional.empty(), Optional.empty(), Optional.empty()));
    }

    @Test
    void findsTheEntryBehindATornOneOnTheSameLine() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] whole = done("a", "2026-05-04T07:00:00Z", ",\"note\":\"Öl\"").getBytes(StandardCharsets.UTF_8);
        bytes.write(whole, 0, new String(whole, StandardCharsets.ISO_8859_1).indexOf('Ã') + 1); // amid the Ö
        bytes.writeBytes(done("b", "2026-05-05T07:00:00Z", "").getBytes(StandardCharsets.UTF_8));
        bytes.write('\n');
        bytes.write(new byte[16]); // what a power cut leaves on some file systems
        bytes.writeBytes(done("c", "2026-05-06T07:00:00Z", "").getBytes(StandardCharsets.UTF_8));

        Ledger ledger = read(bytes.toByteArray());

        assertEquals(List.of("b", "c"), ids(ledger));
        assertEquals(
                "this line is torn: the program or the power went while it was written",
                ledger.complaints().get(0).found());
        assertEquals(2, ledger.complaints().size());
    }

    @Test
    void anEmptyFileIsAnEmptyLedger() {
        assertEquals(Ledger.EMPTY, read(new byte[0]));
    }
}
