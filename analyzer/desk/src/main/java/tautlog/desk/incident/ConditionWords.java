package tautlog.desk.incident;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tautlog.desk.report.Place;

/** What the instrument and the receiver said of the conditions. */
final class ConditionWords {
    private ConditionWords() {}

    static List<String> of(OutingFacts outing) {
        List<String> lines = new ArrayList<>();
        Readings.Health health = outing.readings().health();
        lines.add(
                health.celsius().isPresent() && health.supplyVolts().isPresent()
                        ? String.format(
                                Locale.ROOT,
                                "The instrument's board was at %.1f °C, its supply at %.2f V.",
                                health.celsius().getAsDouble(),
                                health.supplyVolts().getAsDouble())
                        : "The instrument did not tell its temperature and supply.");
        lines.add(outing.at()
                .place()
                .map(ConditionWords::place)
                .orElse("Where the winch stood is not known: no receiver told it in the 10 s before."));
        return lines;
    }

    private static String place(Place place) {
        return String.format(
                Locale.ROOT,
                "The winch stood at %.5f° north, %.5f° east (WGS 84), told %.0f s before.",
                place.latitudeDegrees(),
                place.longitudeDegrees(),
                place.ageSeconds());
    }
}
