package tautlog.desk.service;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tautlog.rig.GearKind;
import tautlog.service.Ledger;
import tautlog.service.Machine;

/** Entries held against the rigs of several winches, of which some cannot be read. */
class GearDoubtsTest {
    private static final Machine HILLSIDE =
            machine("hillside", Map.of("choker", new Machine.Kept(GearKind.CHAIN, 1, Optional.empty())));
    private static final Machine UNREAD = machine("upper-landing", Map.of());
    private static final String COULD_NOT =
            "Gear of the ledger could not be held against the rig of upper-landing, which"
                    + " cannot be read: what is said of it may be meant of other gear.";

    private static Machine machine(String winch, Map<String, Machine.Kept> gear) {
        return new Machine(winch, gear, List.of(), false);
    }

    private static Ledger ledger(String... lines) {
        return Ledger.read(
                "ledger.jsonl",
                String.join("\n", lines).getBytes(StandardCharsets.UTF_8),
                ZoneOffset.UTC,
                Instant.parse("2026-06-01T00:00:00Z"));
    }

    private static String out(String id, String gear, String more) {
        return "{\"id\":\"" + id + "\",\"kind\":\"out-of-service\",\"at\":\"2026-05-04\",\"gear\":\"" + gear + "\""
                + more + "}";
    }

    private static Set<String> doubts(Ledger ledger, Machine... machines) {
        return new LedgerDoubts(ledger, KnownGear.ofMachines(List.of(machines))).besideLines();
    }

    @Test
    void holdsEntriesWithoutAWinchAgainstTheRigsThatCanBeRead() {
        Ledger ledger = ledger(out("a", "chokr", ""), out("b", "skidding-cone", ""), out("c", "choker", ""));

        assertEquals(
                Set.of(
                        COULD_NOT,
                        "The ledger speaks of gear \"chokr\" that no rig has which can be read (entry a, out-of-service)."
                                + " Did somebody mean \"choker\"? Enter it again with --replaces a.",
                        "The ledger speaks of gear \"skidding-cone\" that no rig has which can be read (entry b,"
                                + " out-of-service). The rig has: choker. If it is gone, enter it as retired."),
                doubts(ledger, HILLSIDE, UNREAD));
    }

    @Test
    void saysThatARigCannotBeReadOnlyWhereTheLedgerMaySpeakOfItsGear() {
        Ledger ofOther = ledger(out("a", "choker", ",\"winch\":\"hillside\""));
        Ledger ofIt = ledger(out("a", "chokr", ",\"winch\":\"upper-landing\""));
        Ledger ofNoGear = ledger("{\"id\":\"a\",\"kind\":\"done\",\"at\":\"2026-05-04\",\"task\":\"joint-crosses\"}");

        assertEquals(Set.of(), doubts(ofOther, HILLSIDE, UNREAD));
        assertEquals(Set.of(COULD_NOT), doubts(ofIt, HILLSIDE, UNREAD));
        assertEquals(Set.of(), doubts(ofNoGear, HILLSIDE, UNREAD));
        assertEquals(Set.of(), new LedgerDoubts(ofIt, KnownGear.ofWinches(Set.of("upper-landing"))).besideLines());
    }

    @Test
    void saysNothingOfGearWhereThereIsNoMachine() {
        assertEquals(Set.of(), doubts(ledger(out("a", "choker", ""))));
    }
}
