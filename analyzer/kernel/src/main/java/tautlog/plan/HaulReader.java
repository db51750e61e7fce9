package tautlog.plan;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tautlog.config.NearestKey;
import tautlog.config.Reading;

/** Reads what a person wrote of a haul; every flaw is noted, and reading goes on. */
public final class HaulReader {
    private static final String NUMBER = "(\\d{1,9}(?:\\.\\d{1,9})?)";
    private static final Pattern FRICTION = Pattern.compile("\\s*" + NUMBER + "(?:\\s*\\.\\.\\s*" + NUMBER + ")?\\s*");
    /** Chosen: twice the greatest band there is. */
    private static final double GREATEST_FRICTION = 2;

    private static final String FRICTION_ADVICE =
            "Write both ends (\"0.4..0.7\"). Allowed: above 0 to 2, the lower end first.";

    private final HaulText text;
    private final Flaws flaws;

    private HaulReader(HaulText text, Flaws flaws) {
        this.text = text;
        this.flaws = flaws;
    }

    /** The haul; empty when something of it is wrong, and that is noted. */
    public static Optional<Haul> read(HaulText text, Flaws flaws) {
        return new HaulReader(text, flaws).haul();
    }

    private Optional<Haul> haul() {
        Optional<GreenLog> log = new LogReader(text.log(), flaws).read();
        Optional<Friction> friction = friction();
        Optional<Slope> slope = new SlopeReader(flaws).read(text.slope(), text.slopePlusMinus());
        return log.flatMap(l -> friction.flatMap(f -> slope.map(s -> new Haul(l, f, s))));
    }

    private Optional<Friction> friction() {
        if (text.ground().isPresent() && text.friction().isPresent()) {
            flaws.add("friction", "the ground is written twice", "Write ground or friction.");
        }
        if (text.friction().isPresent()) {
            return coefficient(text.friction().get()).map(Friction::written);
        }
        return text.ground().isPresent()
                ? ground(text.ground().get()).map(Friction::of)
                : Optional.of(Friction.ASSUMED);
    }

    private Optional<GroundClass> ground(String word) {
        Optional<GroundClass> ground = Arrays.stream(GroundClass.values())
                .filter(known -> known.word().equals(word.strip()))
                .findFirst();
        if (ground.isEmpty()) {
            String meant = NearestKey.to(
                            word.strip(),
                            Arrays.stream(GroundClass.values())
                                    .map(GroundClass::word)
                                    .toList())
                    .map(nearest -> "Did you mean " + nearest + "? ")
                    .orElse("");
            flaws.add(
                    "ground",
                    Reading.show(word) + " is no ground that is known here",
                    meant + "Allowed: " + GroundClass.allowed() + "; or write friction.");
        }
        return ground;
    }

    private Optional<Interval> coefficient(String written) {
        Matcher numbers = FRICTION.matcher(written);
        if (!numbers.matches()) {
            flaws.add("friction", Reading.show(written) + " is no friction", FRICTION_ADVICE);
            return Optional.empty();
        }
        double low = Double.parseDouble(numbers.group(1));
        double high = numbers.group(2) == null ? low : Double.parseDouble(numbers.group(2));
        if (low <= 0 || high > GREATEST_FRICTION || low > high) {
            flaws.add("friction", Reading.show(written) + " is out of range", FRICTION_ADVICE);
            return Optional.empty();
        }
        return Optional.of(new Interval(low, high));
    }
}
