package tautlog.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tautlog.config.Reading;
import tautlog.quantity.Density;
import tautlog.quantity.Length;
import tautlog.quantity.QuantityException;

/** Reads {@code "Norway spruce, 12 m, 40/28 cm"}: what it is, how long, how thick. */
final class LogReader {
    private static final String KEY = "log";
    private static final String EXAMPLE = "\"Norway spruce, 12 m, 40/28 cm\"";
    /** A number, perhaps with a sign or a point, first: no species begins so. */
    private static final Pattern NUMBER_FIRST = Pattern.compile("\\s*[+-]?[\\d.].*", Pattern.DOTALL);

    private static final Pattern MIDDLE = Pattern.compile("\\s*mid(?:dle)?\\s+(.*)", Pattern.DOTALL);
    private static final Pattern SHARED_UNIT =
            Pattern.compile("\\s*([^/]+(?:/[^/]+)*/\\s*[+-]?[\\d.]+)\\s*(\\D*?)\\s*");
    private static final String DIAMETER_ADVICE =
            "Write large end/small end (\"40/28 cm\"), large end/middle/small end (\"40/35/28 cm\") or the middle"
                    + " (\"mid 34 cm\").";
    /** Chosen: beyond them somebody mistook a unit. */
    private static final BigDecimal SHORTEST_MM = new BigDecimal("500");

    private static final BigDecimal LONGEST_MM = new BigDecimal("80000");
    private static final BigDecimal THINNEST_MM = new BigDecimal("20");
    private static final BigDecimal THICKEST_MM = new BigDecimal("4000");

    private final String text;
    private final Flaws flaws;

    LogReader(String text, Flaws flaws) {
        this.text = text;
        this.flaws = flaws;
    }

    /** The log; empty when something of it is wrong, and all of that is noted. */
    Optional<GreenLog> read() {
        String[] parts = text.split(",", -1);
        if (parts.length != 3) {
            flaws.add(
                    KEY,
                    Reading.show(text) + " has not three parts between commas",
                    "Write species or density, length, diameters (" + EXAMPLE
                            + "). Numbers have a point, not a comma.");
            return Optional.empty();
        }
        Optional<GreenDensity> density = density(parts[0]);
        Optional<Length> length =
                length("length", parts[1]).filter(l -> isWithin("length", l, SHORTEST_MM, LONGEST_MM));
        Optional<Diameters> diameters = diameters(parts[2]);
        return density.flatMap(d -> length.flatMap(l -> diameters.map(all -> new GreenLog(d, l, all))));
    }

    private Optional<GreenDensity> density(String part) {
        if (NUMBER_FIRST.matcher(part).matches()) {
            try {
                return Optional.of(GreenDensity.written(Density.parse(part.strip())));
            } catch (QuantityException wrong) {
                flaws.add(KEY, "density", wrong);
                return Optional.empty();
            }
        }
        Optional<Species> species = SpeciesTable.shipped().named(part);
        if (species.isEmpty()) {
            flaws.add(KEY, Reading.show(part.strip()) + " is no species that is known here", speciesAdvice(part));
        }
        return species.map(GreenDensity::of);
    }

    private static String speciesAdvice(String part) {
        List<String> near = SpeciesTable.shipped().near(part);
        String names = near.isEmpty()
                ? "Known: "
                        + String.join(
                                ", ",
                                SpeciesTable.shipped().all().stream()
                                        .map(Species::common)
                                        .toList())
                : "Nearest: " + String.join(", ", near);
        return names + ". Or write its density in place of the species (\"950 kg/m3\", \"59 lb/ft3\").";
    }

    private Optional<Length> length(String part, String written) {
        try {
            return Optional.of(Length.parse(written.strip()));
        } catch (QuantityException wrong) {
            flaws.add(KEY, part, wrong);
            return Optional.empty();
        }
    }

    private boolean isWithin(String part, Length length, BigDecimal leastMm, BigDecimal greatestMm) {
        BigDecimal millimetres = length.millimetres();
        boolean isWithin = millimetres.compareTo(leastMm) >= 0 && millimetres.compareTo(greatestMm) <= 0;
        if (!isWithin) {
            flaws.add(
                    KEY,
                    part + ": " + length + " is out of range",
                    "Allowed: " + new Length(leastMm) + " to " + new Length(greatestMm) + ".");
        }
        return isWithin;
    }

    private Optional<Diameters> diameters(String part) {
        Matcher middle = MIDDLE.matcher(part);
        if (middle.matches()) {
            return diameter(middle.group(1)).map(Diameters.Middle::new);
        }
        Matcher shared = SHARED_UNIT.matcher(part);
        if (!shared.matches()) {
            flaws.add(
                    KEY,
                    "diameters: " + Reading.show(part.strip()) + " says not where it was measured",
                    DIAMETER_ADVICE);
            return Optional.empty();
        }
        List<Length> lengths = new ArrayList<>();
        String unit = shared.group(2);
        if (!isUnit(part, unit)) {
            return Optional.empty();
        }
        String[] numbers = shared.group(1).split("/", -1);
        for (String number : numbers) {
            diameter(number.strip() + " " + shared.group(2)).ifPresent(lengths::add);
        }
        return lengths.size() == numbers.length ? measured(part, lengths) : Optional.empty();
    }

    private Optional<Length> diameter(String written) {
        return length("diameter", written).filter(d -> isWithin("diameter", d, THINNEST_MM, THICKEST_MM));
    }

    /** Said once for all diameters; one that is missing is a flaw of each. */
    private boolean isUnit(String part, String unit) {
        try {
            return unit.isEmpty() || Length.parse("1 " + unit).millimetres().signum() > 0;
        } catch (QuantityException wrong) {
            flaws.add(KEY, "diameters: " + Reading.show(part.strip()) + " are no lengths", wrong.allowed());
            return false;
        }
    }

    private Optional<Diameters> measured(String part, List<Length> largeToSmall) {
        for (int i = 1; i < largeToSmall.size(); i++) {
            if (largeToSmall
                            .get(i)
                            .millimetres()
                            .compareTo(largeToSmall.get(i - 1).millimetres())
                    > 0) {
                flaws.add(KEY, "diameters: " + Reading.show(part.strip()) + " grow", "The large end comes first.");
                return Optional.empty();
            }
        }
        if (largeToSmall.size() > 3) {
            flaws.add(KEY, "diameters: " + Reading.show(part.strip()) + " are more than three", DIAMETER_ADVICE);
            return Optional.empty();
        }
        return Optional.of(
                largeToSmall.size() == 2
                        ? new Diameters.Ends(largeToSmall.get(0), largeToSmall.get(1))
                        : new Diameters.EndsAndMiddle(largeToSmall.get(0), largeToSmall.get(1), largeToSmall.get(2)));
    }
}
