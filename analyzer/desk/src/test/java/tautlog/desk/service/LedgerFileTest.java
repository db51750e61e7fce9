package tautlog.desk.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.service.Act;
import tautlog.service.Complaint;
import tautlog.service.Entry;
import tautlog.service.Ledger;

/** The ledger on the disk: cut, killed, written to by several programs at once. */
class LedgerFileTest {
    private static final Instant NOW = Instant.parse("2027-01-01T00:00:00Z");

    @TempDir
    Path folder;

    static Entry entry(String id) {
        return new Entry(
                id,
                Instant.parse("2026-05-04T07:00:00Z"),
                Instant.parse("2026-05-04T07:00:00Z"),
                Optional.of("Wrén"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new Act.Done("joint-crosses"));
    }

    private static Ledger read(LedgerFile file) throws IOException {
        return file.read(ZoneOffset.UTC, NOW);
    }

    @Test
    void addsALineBehindWhateverIsLeftOfATornOneAndRemovesNothing() throws IOException {
        Path path = folder.resolve("ledger.jsonl");
        LedgerFile file = new LedgerFile(path);
        file.append(entry("a"));
        file.append(entry("b"));
        byte[] whole = Files.readAllBytes(path);
        int first = new String(whole, StandardCharsets.ISO_8859_1).indexOf('\n') + 1;
        for (int cut = 0; cut < whole.length; cut++) {
            byte[] torn = Arrays.copyOf(whole, cut);
            Files.write(path, torn);

            file.append(entry("c"));

            Set<String> expected = new TreeSet<>(Set.of("c"));
            if (cut >= first - 1) {
                expected.add("a");
            }
            if (cut == whole.length - 1) {
                expected.add("b");
            }
            Ledger ledger = read(file);
            assertEquals(expected, new TreeSet<>(ledger.ids()), "cut at " + cut);
            boolean isTorn = cut > 0 && cut != first - 1 && cut != first && cut != whole.length - 1;
            assertEquals(isTorn ? 1 : 0, ledger.complaints().size(), "cut at " + cut);
            assertEquals(
                    new String(torn, StandardCharsets.ISO_8859_1),
                    new String(Files.readAllBytes(path), StandardCharsets.ISO_8859_1).substring(0, cut));
        }
    }

    @Test
    void leavesAHandEditedFileAsItIs() throws IOException {
        Path path = folder.resolve("ledger.jsonl");
        String edited = "\uFEFF# ours\r\n\r\nnot an entry";
        Files.writeString(path, edited);

        new LedgerFile(path).append(entry("a"));

        String now = Files.readString(path);
        assertTrue(now.startsWith(edited + "\n{\"id\":\"a\""), now);
        assertEquals(
                List.of(3),
                read(new LedgerFile(path)).complaints().stream()
                        .map(Complaint::line)
                        .toList());
    }

    @Test
    void makesNoFolder() {
        assertThrows(
                NoSuchFileException.class,
                () -> new LedgerFile(folder.resolve("no-folder").resolve("ledger.jsonl")).append(entry("a")));
    }

    @Test
    void twoProgramsAtOnceLoseNothing() throws Exception {
        Path path = folder.resolve("ledger.jsonl");
        Process one = writer(path, "one", 150);
        Process other = writer(path, "other", 150);

        assertEquals(150, acknowledged(one).size());
        assertEquals(150, acknowledged(other).size());

        Ledger ledger = read(new LedgerFile(path));
        assertEquals(300, ledger.ids().size());
        assertEquals(List.of(), ledger.complaints());
    }

    /** Five kills of a real process at a random moment of its writing. */
    @Test
    void whatWasAcknowledgedSurvivesAKillWhileWriting() throws Exception {
        Path path = folder.resolve("ledger.jsonl");
        Random random = new Random(5);
        Set<String> acknowledged = new HashSet<>();
        for (int i = 0; i < 5; i++) {
            Process process = writer(path, "w" + i, 1_000_000);
            BufferedReader out =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
            for (int lines = 1 + random.nextInt(60); lines > 0; lines--) {
                acknowledged.add(String.valueOf(out.readLine()));
            }
            process.destroyForcibly();
            process.waitFor();
        }

        Ledger ledger = read(new LedgerFile(path));

        assertTrue(acknowledged.size() >= 5);
        for (String id : acknowledged) {
            assertTrue(ledger.ids().contains(id), id);
        }
        assertTrue(ledger.complaints().size() <= 5, () -> ledger.complaints().toString());
    }

    private static Process writer(Path ledger, String name, int entries) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Writer.class.getName(),
                        ledger.toString(),
                        name,
                        Integer.toString(entries))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    private static List<String> acknowledged(Process process) throws Exception {
        List<String> ids = new ArrayList<>();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            out.lines().forEach(ids::add);
        }
        assertEquals(0, process.waitFor());
        return ids;
    }

    /** A program that appends entries and prints the id of each that is on the disk. */
    static final class Writer {
        private Writer() {}

        public static void main(String[] args) throws IOException {
            LedgerFile file = new LedgerFile(Path.of(args[0]));
            for (int i = 0; i < Integer.parseInt(args[2]); i++) {
                String id = args[1] + "-" + i + ".";
                file.append(entry(id));
                System.out.println(id);
                System.out.flush();
            }
        }
    }
}
