package tautlog.usage;

import tautlog.detect.Known;

/**
 * One published rule by which a wire rope is discarded, held against what was found.
 *
 * @param rule what discards: {@code 10 or more broken wires in one lay length}
 * @param source standard and clause
 * @param status how well the rule's text is known here
 * @param found what was entered: {@code 7}; empty when nothing was
 * @param reached unknown when nothing was entered, or the rope's make is not known well enough
 */
public record RopeCriterion(String rule, String source, Status status, String found, Known reached) {
    /** How a rule came here. */
    public enum Status {
        SEEN("read"),
        FROM_MEMORY("from memory");

        private final String words;

        Status(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
