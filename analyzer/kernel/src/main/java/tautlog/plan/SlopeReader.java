package tautlog.plan;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tautlog.config.Reading;

/** Reads a slope: an angle, or a grade in percent (rise / run on the level). */
final class SlopeReader {
    private static final Pattern WRITTEN = Pattern.compile("\\s*([+-]?\\d{1,9}(?:\\.\\d{1,9})?)\\s*(deg|°|%)\\s*");
    private static final String ADVICE =
            "Write degrees or percent, uphill above 0 (\"15 deg\", \"-25 %\"). Allowed: up to 60 deg, which is 173 %.";

    private final Flaws flaws;

    SlopeReader(Flaws flaws) {
        this.flaws = flaws;
    }

    private record Written(double number, boolean isGrade) {
        double degrees() {
            return isGrade ? Math.toDegrees(Math.atan(number / 100)) : number;
        }
    }

    /** Level ground when nothing is written; empty when it is wrong, and that is noted. */
    Optional<Slope> read(Optional<String> slope, Optional<String> plusMinus) {
        if (slope.isEmpty() && plusMinus.isEmpty()) {
            return Optional.of(Slope.ASSUMED);
        }
        Optional<Written> middle = slope.isEmpty() ? Optional.of(new Written(0, false)) : written("slope", slope.get());
        Optional<Written> off = plusMinus.isEmpty() ? Optional.empty() : written("slope-plus-minus", plusMinus.get());
        if (middle.isEmpty() || (plusMinus.isPresent() && off.isEmpty())) {
            return Optional.empty();
        }
        if (slope.isEmpty()) {
            flaws.add("slope-plus-minus", "there is no slope that it belongs to", "Write slope, too.");
            return Optional.empty();
        }
        return ends(
                slope.get(),
                middle.get(),
                off.orElse(new Written(0, middle.get().isGrade())));
    }

    private Optional<Slope> ends(String slope, Written middle, Written off) {
        if (off.number() < 0) {
            flaws.add("slope-plus-minus", "it is below 0", "Write how far the slope may be off, either way.");
            return Optional.empty();
        }
        if (off.isGrade() != middle.isGrade()) {
            flaws.add("slope-plus-minus", "it has another unit than the slope", "Write both in deg, or both in %.");
            return Optional.empty();
        }
        double low = new Written(middle.number() - off.number(), middle.isGrade()).degrees();
        double high = new Written(middle.number() + off.number(), middle.isGrade()).degrees();
        if (low < -Slope.STEEPEST_DEGREES || high > Slope.STEEPEST_DEGREES) {
            flaws.add("slope", Reading.show(slope) + ", with what it may be off, is too steep", ADVICE);
            return Optional.empty();
        }
        return Optional.of(new Slope(new Interval(low, high), false));
    }

    private Optional<Written> written(String key, String text) {
        Matcher matcher = WRITTEN.matcher(text);
        if (!matcher.matches()) {
            flaws.add(key, Reading.show(text) + " is no slope", ADVICE);
            return Optional.empty();
        }
        return Optional.of(new Written(
                Double.parseDouble(matcher.group(1)), matcher.group(2).equals("%")));
    }
}
