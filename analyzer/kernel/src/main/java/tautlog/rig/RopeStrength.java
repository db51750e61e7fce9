package tautlog.rig;

import java.math.BigDecimal;
import java.util.Map;
import java.util.stream.Collectors;
import tautlog.quantity.Length;

/** Minimum breaking force of steel wire rope, EN 12385-4: F = K' · d² · R / 1000, in kN, d in mm, R in N/mm². */
final class RopeStrength {
    /** K' by construction: {@code 6x36 IWRC}. */
    static final Map<String, BigDecimal> FACTORS = ShippedTable.named("rope-factor.csv").rows().stream()
            .collect(Collectors.toMap(row -> row[0] + " " + row[1], row -> new BigDecimal(row[2])));

    private RopeStrength() {}

    /**
     * In newtons, exact.
     *
     * @param construction a key of {@link #FACTORS}
     * @param wireGrade in N/mm²
     * @throws IllegalArgumentException if {@code construction} is not known
     */
    static BigDecimal newtons(String construction, Length diameter, int wireGrade) {
        BigDecimal factor = FACTORS.get(construction);
        if (factor == null) {
            throw new IllegalArgumentException(
                    "construction must be one of " + FACTORS.keySet() + ", was " + construction);
        }
        BigDecimal mm = diameter.millimetres();
        return factor.multiply(mm).multiply(mm).multiply(BigDecimal.valueOf(wireGrade));
    }
}
