package tautlog.rig;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import tautlog.config.ConfigTable;
import tautlog.quantity.Force;
import tautlog.quantity.Length;

/**
 * One {@code [[gear]]} as written, each value by itself right.
 *
 * @param table where it stands, for problems that only show when it is used
 * @param isWhole false when a value of it was wrong or missing: what depends on it is not judged
 * @param grade of a chain
 * @param size of a chain, width of a web, diameter of a rope
 * @param linkThickness measured at a worn chain's thinnest point
 * @param rope how its breaking force is known; empty for other kinds
 * @param proofFactor proof load / working load limit, from the marking
 * @param designFactor breaking load / working load limit, from the marking
 */
record GearEntry(
        ConfigTable table,
        boolean isWhole,
        String id,
        GearKind kind,
        Optional<Force> wll,
        OptionalInt grade,
        Optional<Length> size,
        Optional<Length> linkThickness,
        Optional<RopeData> rope,
        Optional<BigDecimal> proofFactor,
        Optional<BigDecimal> designFactor,
        int count,
        Optional<String> serial,
        Optional<LocalDate> fitted,
        Optional<LocalDate> lastInspection) {

    /**
     * What a rope's marking says of its strength.
     *
     * @param construction {@code 6x36 IWRC}
     * @param wireGrade in N/mm²
     * @param breakingForce minimum breaking force from the marking or certificate
     * @param termination how much of the rope's strength its end keeps
     */
    record RopeData(
            Optional<String> construction,
            OptionalInt wireGrade,
            Optional<Force> breakingForce,
            Optional<BigDecimal> termination) {}

    /** What it is, for a person. */
    String description() {
        StringBuilder text = new StringBuilder(kind.word());
        grade.ifPresent(g -> text.append(", grade ").append(g));
        if (size.isPresent() && table.writtenText(sizeKey()).isPresent()) {
            text.append(", ").append(table.writtenText(sizeKey()).orElseThrow());
        }
        rope.ifPresent(data -> {
            data.construction().ifPresent(c -> text.append(", ").append(c));
            data.wireGrade().ifPresent(g -> text.append(", ").append(g).append(" N/mm2"));
        });
        return text.toString();
    }

    String sizeKey() {
        return kind == GearKind.ROPE ? "diameter" : "size";
    }

    /** Why a worn chain must not be used; empty when it is thick enough or nobody measured. */
    Optional<String> outOfService() {
        if (linkThickness.isEmpty() || size.isEmpty()) {
            return Optional.empty();
        }
        BigDecimal measured = linkThickness.get().millimetres();
        return ChainWear.leastMillimetres(size.get())
                .filter(least -> measured.compareTo(least) < 0)
                .map(least -> "Out of service: link thickness " + linkThickness.get() + " is below "
                        + least.stripTrailingZeros().toPlainString()
                        + " mm, the least that 29 CFR 1910.184 practice allows for this size.");
    }

    /** The piece as everyone else sees it. */
    Gear toGear(Optional<Rating> rating) {
        return new Gear(
                id, kind, count, description(), serial, fitted, lastInspection, rating, outOfService(), ropeMake());
    }

    private Optional<RopeMake> ropeMake() {
        return rope.map(data -> new RopeMake(size.map(Length::millimetres), data.construction()));
    }
}
