package tautlog.rig;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.config.ConfigTable;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.quantity.Angle;

/** Reads one item of a hookup and works out what it carries and what it may. */
final class ItemReader {
    private static final BigDecimal DEFAULT_TERMINATION = new BigDecimal("0.8");
    private static final Reading<BigDecimal> ANGLE = Reading.decimal(Range.between("0", "180"));
    private static final Reading<BigDecimal> FACTOR = Reading.decimal(Range.aboveZeroTo("1"));
    private static final Reading<BigDecimal> BASKET_FACTOR = Reading.decimal(Range.aboveZeroTo("2"));

    /** How a strap holds a block to its anchor. */
    private enum Hitch {
        STRAIGHT,
        BASKET,
        CHOKER
    }

    /** What an item may carry, as a fraction of its straight rating. */
    private record Fraction(BigDecimal value, boolean isAtMost) {}

    private final ConfigTable table;
    private final GearEntry gear;
    private final Place place;
    private final Optional<Place> blockBefore;
    private final List<String> notes = new ArrayList<>();
    private Optional<Turn> turn = Optional.empty();

    private ItemReader(ConfigTable table, GearEntry gear, Place place, Optional<Place> blockBefore) {
        this.table = table;
        this.gear = gear;
        this.place = place;
        this.blockBefore = blockBefore;
    }

    /**
     * Where the item is in its hookup; empty when its gear is not known or cannot be there, and that is noted.
     *
     * @param gearById every gear whose id and kind could be read
     */
    static Optional<Place> place(ConfigTable table, Map<String, GearEntry> gearById) {
        Optional<GearEntry> gear = gear(table, gearById);
        Optional<Place> written = table.optional("as", Reading.oneOf(Place.class));
        if (gear.isEmpty() || (table.has("as") && written.isEmpty())) {
            return Optional.empty();
        }
        GearKind kind = gear.get().kind();
        Place place = written.orElse(Place.ofKind(kind));
        if (!place.takes(kind)) {
            String allowed = Arrays.stream(Place.values())
                    .filter(other -> other.takes(kind))
                    .map(other -> '"' + other.word() + '"')
                    .collect(Collectors.joining(", "));
            table.problem("as", "a " + kind.word() + " cannot be \"" + place.word() + '"', "Allowed: " + allowed + ".");
            return Optional.empty();
        }
        return Optional.of(place);
    }

    static boolean isRope(ConfigTable table, Map<String, GearEntry> gearById) {
        return gear(table, gearById)
                .filter(gear -> gear.kind() == GearKind.ROPE)
                .isPresent();
    }

    /** False, and noted, for a rope of which the rig must say whether it is the winch's own line and does not. */
    static boolean isStated(ConfigTable table, Map<String, GearEntry> gearById) {
        if (!isRope(table, gearById) || table.has("as")) {
            return true;
        }
        table.problem(
                "as",
                "is missing: this rope may be the winch's own line or not",
                "Write as = \"straight\" for a rope of its own, as = \"choker\" for one round a log, as = \"winch-line\" for"
                        + " a part of the winch's line.");
        return false;
    }

    private static Optional<GearEntry> gear(ConfigTable table, Map<String, GearEntry> gearById) {
        return table.optional("gear", Reading.text()).flatMap(id -> Optional.ofNullable(gearById.get(id)));
    }

    /**
     * The item; empty when something about it is wrong or missing, and noted.
     *
     * @param place as {@link #place} gave it
     * @param blockBefore the nearest block listed before it, fixed or moving
     * @param doubling what a moving block makes of the loads
     */
    static Optional<LoadedItem> read(
            ConfigTable table,
            Map<String, GearEntry> gearById,
            Place place,
            Optional<Place> blockBefore,
            Doubling doubling) {
        return gear(table, gearById).flatMap(gear -> new ItemReader(table, gear, place, blockBefore).item(doubling));
    }

    private Optional<LoadedItem> item(Doubling doubling) {
        int before = table.problemsSoFar();
        BigDecimal multiple = multiple(doubling);
        Fraction fraction = fraction();
        Optional<Rating> rating = rating();
        if (table.problemsSoFar() != before || rating.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(loaded(multiple, fraction, rating.get()));
    }

    private Optional<Rating> rating() {
        boolean isLine = place == Place.WINCH_LINE;
        Optional<Rating> rating = new Ratings(gear).find(isLine);
        if (rating.isEmpty() && gear.isWhole()) {
            gear.table().problem("wll", "no working load limit is known", new Ratings(gear).advice(isLine));
        }
        return rating;
    }

    private LoadedItem loaded(BigDecimal multiple, Fraction fraction, Rating rating) {
        BigDecimal allowed = rating.newtons().multiply(fraction.value());
        Optional<BigDecimal> proof =
                gear.proofFactor().or(this::kindsProofFactor).map(allowed::multiply);
        Optional<BigDecimal> breaking = markedBreaking(fraction)
                .or(() -> gear.designFactor().or(this::kindsDesignFactor).map(allowed::multiply));
        List<String> all = new ArrayList<>();
        all.add("Rating: " + rating.source() + ".");
        gear.outOfService().ifPresent(all::add);
        all.addAll(rating.notes());
        all.addAll(notes);
        boolean isAtMost = fraction.isAtMost() || gear.outOfService().isPresent();
        return new LoadedItem(gear.id(), place.word(), multiple, allowed, isAtMost, proof, breaking, all, turn);
    }

    /** The marked breaking force of the winch's own line says more than twice its limit. */
    private Optional<BigDecimal> markedBreaking(Fraction fraction) {
        return place == Place.WINCH_LINE
                ? new Ratings(gear).markedBreakingForce().map(fraction.value()::multiply)
                : Optional.empty();
    }

    /** ASTM A413 and A391 practice, EN 818: chain is proof-tested to twice its limit. */
    private Optional<BigDecimal> kindsProofFactor() {
        return gear.kind() == GearKind.CHAIN ? Optional.of(new BigDecimal("2")) : Optional.empty();
    }

    /** Chain 4: EN 818. Slings of web and rope 5: ASME B30.9 practice. A winch's own line 2: practice, no source. */
    private Optional<BigDecimal> kindsDesignFactor() {
        return switch (gear.kind()) {
            case CHAIN -> Optional.of(new BigDecimal("4"));
            case WEB -> Optional.of(new BigDecimal("5"));
            case ROPE -> Optional.of(new BigDecimal(place == Place.WINCH_LINE ? "2" : "5"));
            case BLOCK, HOOK, SHACKLE, OTHER -> Optional.empty();
        };
    }

    private BigDecimal multiple(Doubling doubling) {
        return switch (place) {
            case WINCH_LINE -> doubling.winchSide();
            case STRAIGHT -> doubling.here();
            case CHOKER -> doubling.isThere() ? doubling.behind() : BigDecimal.ONE;
            case BLOCK -> turned(doubling);
            case BLOCK_STRAP ->
                blockBefore.equals(Optional.of(Place.MOVING_BLOCK)) ? doubling.behind() : turned(doubling);
            case MOVING_BLOCK -> {
                table.or("parts", Reading.whole(2, 2), 2);
                yield doubling.behind();
            }
        };
    }

    /** 2 cos(a/2) of the line's tension there; 2 when no angle is written, the most it can be. */
    private BigDecimal turned(Doubling doubling) {
        Turn line = new Turn(doubling.here(), betweenLines());
        turn = Optional.of(line);
        return line.multiple();
    }

    private Optional<Angle> betweenLines() {
        Optional<BigDecimal> between = table.optional("angle_between_lines_deg", ANGLE);
        Optional<BigDecimal> turn = table.optional("turn_deg", ANGLE);
        if (table.has("angle_between_lines_deg") && table.has("turn_deg")) {
            table.problem("turn_deg", "the angle is written twice", "Write angle_between_lines_deg or turn_deg.");
        }
        Optional<Angle> angle =
                between.map(Angle::new).or(() -> turn.map(Angle::new).map(Angle::supplement));
        if (angle.isEmpty()) {
            notes.add(Turn.NOT_WRITTEN);
        }
        String key = table.has("turn_deg") ? "turn_deg" : "angle_between_lines_deg";
        if (angle.isPresent() && BlockAngle.isTooWide(angle.get())) {
            table.problem(key, BlockAngle.found(angle.get()), BlockAngle.ALLOWED);
        }
        return angle;
    }

    private Fraction fraction() {
        return switch (place) {
            case STRAIGHT, WINCH_LINE -> gear.kind() == GearKind.ROPE ? rope() : whole();
            case CHOKER -> choked();
            case BLOCK, MOVING_BLOCK -> whole();
            case BLOCK_STRAP -> strap();
        };
    }

    private static Fraction whole() {
        return new Fraction(BigDecimal.ONE, false);
    }

    private Fraction rope() {
        Optional<BigDecimal> written = table.optional("termination", GearReader.TERMINATION)
                .or(() -> gear.rope().flatMap(GearEntry.RopeData::termination));
        BigDecimal termination = written.orElse(DEFAULT_TERMINATION);
        if (written.isEmpty()) {
            notes.add("No termination is written: taken as clips or a knot-like eye, which keep 0.8 of the strength.");
        } else if (termination.compareTo(BigDecimal.ONE) < 0) {
            notes.add("Its end keeps " + termination.toPlainString() + " of the strength.");
        }
        return new Fraction(termination, false);
    }

    private Fraction strap() {
        Optional<Hitch> hitch = table.required("hitch", Reading.oneOf(Hitch.class));
        if (hitch.isEmpty()) {
            table.has("factor");
            table.has("choke_angle_deg");
            return whole();
        }
        return switch (hitch.get()) {
            case STRAIGHT -> new Fraction(table.or("factor", FACTOR, BigDecimal.ONE), false);
            case CHOKER -> choked();
            case BASKET -> basket();
        };
    }

    private Fraction basket() {
        Optional<BigDecimal> factor = table.optional("factor", BASKET_FACTOR);
        notes.add(factor.map(f -> "Basket hitch: factor " + f.toPlainString() + " as written.")
                .orElse("Basket hitch without a written factor: taken as one straight leg. The label may allow more."));
        return new Fraction(factor.orElse(BigDecimal.ONE), false);
    }

    private Fraction choked() {
        if (!gear.kind().isSling()) {
            table.problem("hitch", "a " + gear.kind().word() + " cannot be choked", "Allowed: \"straight\".");
            return whole();
        }
        Optional<BigDecimal> factor = table.optional("factor", FACTOR);
        Optional<BigDecimal> degrees = table.optional("choke_angle_deg", ANGLE);
        boolean byAngle = gear.kind() == GearKind.ROPE || gear.kind() == GearKind.WEB;
        BigDecimal choker = factor.orElse(Choking.FACTOR);
        notes.add(
                factor.isPresent()
                        ? "Choker factor " + choker.toPlainString() + " as written."
                        : "Choked: 0.75 of the straight rating (ASME B30.9 practice, 75 to 80 %).");
        if (degrees.isEmpty()) {
            notes.add("No choke angle is written: assumed ≥ 120°.");
            return new Fraction(choker, false);
        }
        if (byAngle) {
            return new Fraction(choker.multiply(Choking.angleFactor(degrees.get())), false);
        }
        boolean isUnrated = Choking.isSharp(degrees.get()) && factor.isEmpty();
        if (isUnrated) {
            notes.add(
                    "Below 120° chain has no published choker factor: the allowed load is at most this. Write factor from"
                            + " the maker's plate.");
        }
        return new Fraction(choker, isUnrated);
    }
}
