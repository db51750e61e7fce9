package tautlog.usage;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Damage that discards a wire rope as soon as it is seen, whatever was counted. */
public enum RopeDamage {
    KINK("kinked", true),
    CRUSHED("crushed", true),
    BIRD_CAGE("bird-caged", true),
    HEAT("damaged by heat", true),
    END("cracked or deformed end attachment", true),
    CORROSION("corroded", true),
    WEAR("outer wires worn by a third of their diameter", true),
    CORE("core protruding", false);

    private static final String SLINGS = "29 CFR 1910.184(f)(5)";

    private final String words;
    private final boolean isOfSlings;

    RopeDamage(String words, boolean isOfSlings) {
        this.words = words;
        this.isOfSlings = isOfSlings;
    }

    /** As in the ledger: {@code bird-cage}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<RopeDamage> of(String word) {
        return Arrays.stream(values())
                .filter(damage -> damage.word().equals(word))
                .findFirst();
    }

    String words() {
        return words;
    }

    String source() {
        return isOfSlings ? SLINGS : RopeDiscard.ISO;
    }

    RopeCriterion.Status status() {
        return isOfSlings ? RopeCriterion.Status.SEEN : RopeCriterion.Status.FROM_MEMORY;
    }
}
