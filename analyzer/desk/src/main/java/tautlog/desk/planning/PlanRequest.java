package tautlog.desk.planning;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tautlog.config.Reading;
import tautlog.desk.limits.ChosenHookups;
import tautlog.plan.Flaws;
import tautlog.plan.Haul;
import tautlog.plan.HaulReader;
import tautlog.plan.PlanException;
import tautlog.quantity.Angle;
import tautlog.rig.BlockAngle;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/**
 * A haul and the hookups to hold it against.
 *
 * @param blockAngle instead of the rig's, at every fixed block; 0 to 150 degrees
 * @param hookupId the only hookup to show, one of the rig's; empty for all
 */
public record PlanRequest(Haul haul, Optional<Angle> blockAngle, Optional<String> hookupId) {
    private static final Pattern DEGREES = Pattern.compile("\\s*(\\d{1,3}(?:\\.\\d{1,6})?)\\s*(?:deg|°)?\\s*");
    private static final BigDecimal HALF_TURN = new BigDecimal("180");

    /** @throws PlanException with everything that is wrong with the texts, or does not fit the rig */
    public static PlanRequest read(PlanText text, Rig rig) throws PlanException {
        Flaws flaws = new Flaws();
        Optional<Haul> haul = HaulReader.read(text.haul(), flaws);
        List<Hookup> hookups = hookups(text, rig, flaws);
        Optional<Angle> angle = text.blockAngle().flatMap(written -> angle(written, flaws));
        if (text.blockAngle().isPresent()
                && !hookups.isEmpty()
                && hookups.stream().noneMatch(Hookup::turnsTheLine)) {
            flaws.add("block-angle", "no fixed block turns the line in what was asked for", "Leave it out.");
        }
        flaws.throwIfAny();
        return new PlanRequest(haul.orElseThrow(), angle, text.hookup());
    }

    private static List<Hookup> hookups(PlanText text, Rig rig, Flaws flaws) {
        try {
            return ChosenHookups.of(rig, text.hookup());
        } catch (IllegalArgumentException unknown) {
            flaws.add(
                    "hookup",
                    "the rig has no hookup " + Reading.show(text.hookup().orElse("")),
                    "It has: "
                            + String.join(
                                    ", ", rig.hookups().stream().map(Hookup::id).toList()) + ".");
            return List.of();
        }
    }

    private static Optional<Angle> angle(String written, Flaws flaws) {
        Matcher degrees = DEGREES.matcher(written);
        if (!degrees.matches()) {
            flaws.add("block-angle", Reading.show(written) + " is no angle", BlockAngle.ALLOWED);
            return Optional.empty();
        }
        BigDecimal number = new BigDecimal(degrees.group(1));
        if (number.compareTo(HALF_TURN) > 0 || BlockAngle.isTooWide(new Angle(number))) {
            flaws.add("block-angle", Reading.show(written) + " is too wide", BlockAngle.ALLOWED);
            return Optional.empty();
        }
        return Optional.of(new Angle(number));
    }

    /** The hookups asked for, their blocks turned to the angle asked for. */
    List<Hookup> hookups(Rig rig) {
        return ChosenHookups.of(rig, hookupId).stream()
                .map(hookup -> blockAngle
                        .filter(angle -> hookup.turnsTheLine())
                        .map(hookup::withBlockAngle)
                        .orElse(hookup))
                .toList();
    }
}
