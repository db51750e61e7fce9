package tautlog.rig;

import java.util.List;
import tautlog.fixtures.Rigs;

/** Short rigs in text for tests: a winch of 40 kN, then whatever gear and items a test writes. */
final class RigText {
    private static final String HEAD = "schema = 1\n[winch]\nname = \"w\"\nrated_pull = \"40 kN\"\n";

    private RigText() {}

    /** Lines of {@code gear}, then one hookup {@code h} with {@code items}. */
    static String of(String gear, String items) {
        return HEAD + gear + "\n[[hookup]]\nid = \"h\"\nitems = [ " + items + " ]\n";
    }

    static String gear(String id, String kind, String more) {
        return "[[gear]]\nid = \"" + id + "\"\nkind = \"" + kind + "\"\n" + more + "\n";
    }

    /** The items of the only hookup of {@link #of}. */
    static List<LoadedItem> items(String gear, String items) {
        return hookup(gear, items).items();
    }

    static Hookup hookup(String gear, String items) {
        return Rigs.parsed(of(gear, items)).hookups().get(0);
    }
}
