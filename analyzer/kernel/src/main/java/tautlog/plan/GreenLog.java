package tautlog.plan;

import tautlog.quantity.Length;

/** A log with its bark, freshly felled. */
public record GreenLog(GreenDensity density, Length length, Diameters diameters) {
    /** Green weight varies that much around a table's figure: Forest Products Laboratory, Technical Note 218. */
    public static final double WEIGHT_VARIES = 0.20;

    /** Standard gravity, 3rd General Conference on Weights and Measures, 1901. */
    private static final double NEWTONS_PER_KILOGRAM = 9.80665;

    /** In m³, by the formula that fits where it was measured. */
    public double cubicMetres() {
        return diameters.cubicMetres(length.metres());
    }

    /** Mass in kg: volume times density. */
    public double kilograms() {
        return cubicMetres() * density.kilogramsPerCubicMetre();
    }

    /** Mass in kg, a fifth less to a fifth more. */
    public Interval kilogramsInterval() {
        return Interval.around(kilograms(), WEIGHT_VARIES);
    }

    /** Weight in newtons, a fifth less to a fifth more. */
    public Interval weightNewtons() {
        return kilogramsInterval().times(NEWTONS_PER_KILOGRAM);
    }
}
