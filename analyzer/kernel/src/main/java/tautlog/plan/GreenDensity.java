package tautlog.plan;

import tautlog.quantity.Density;

/**
 * What a cubic metre of a green log weighs.
 *
 * @param words what it is, for a person: {@code Norway spruce (Picea abies)}, {@code as written}
 * @param source where it comes from, a whole sentence
 */
public record GreenDensity(Density density, String words, String source) {
    /** In kg/m³, above 0. */
    public double kilogramsPerCubicMetre() {
        return density.kilogramsPerCubicMetre().doubleValue();
    }

    static GreenDensity written(Density density) {
        return new GreenDensity(density, "density as written", "The density is the one that was written.");
    }

    static GreenDensity of(Species species) {
        return new GreenDensity(
                species.withBark(),
                species.common() + " (" + species.latin() + ")",
                "Green density with its bark: US Forest Service, FIA table REF_SPECIES (Miles and Smith 2009, NRS-38). It"
                        + " counts the bark's weight for each volume of wood: a diameter measured over the bark makes the log"
                        + " too heavy here, never too light.");
    }
}
