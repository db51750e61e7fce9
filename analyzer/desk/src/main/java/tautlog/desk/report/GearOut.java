package tautlog.desk.report;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import tautlog.rig.Band;

/**
 * Gear that nobody may use.
 *
 * @param piece the name of one of several identical pieces; empty for those without a name
 * @param count how many pieces
 * @param standing {@code out-of-service}, {@code scrap}
 * @param worst of the overloads that no inspection answers; empty when a person's word took it out
 * @param overloads how many they are
 * @param reasons beside overloads, whole sentences
 */
public record GearOut(
        String winch,
        String gear,
        Optional<String> piece,
        int count,
        String standing,
        Optional<Band> worst,
        int overloads,
        List<String> reasons) {
    public GearOut {
        reasons = List.copyOf(reasons);
    }

    /** Into the object that is open. */
    public void write(JsonFields json) throws IOException {
        json.text("winch", winch);
        json.text("gear", gear);
        json.text("piece", piece);
        json.whole("count", count);
        json.text("standing", standing);
        json.text("worst", worst.map(Band::word));
        json.whole("overloads", overloads);
        json.texts("reasons", reasons);
    }
}
