package tautlog.plan;

/**
 * One thing that is wrong with what a plan was asked.
 *
 * @param key which text: {@code log}, {@code slope}
 * @param found what was found, without a full stop: {@code length: "12,5 m" is not a length}
 * @param allowed the next step and what is allowed, whole sentences
 */
public record Flaw(String key, String found, String allowed) {
    @Override
    public String toString() {
        return key + ": " + found + ".\n  " + allowed;
    }
}
