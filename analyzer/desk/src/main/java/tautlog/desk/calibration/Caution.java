package tautlog.desk.calibration;

import tautlog.desk.page.Block;

/**
 * Something that a reader of a calibration must not miss.
 *
 * @param kind for programs, letters and hyphens
 * @param label one to four words
 * @param text whole sentences
 */
record Caution(String kind, Block.Tone tone, String label, String text) {
    /** The calibration as it stands should not be used without it being seen to. */
    static Caution act(String kind, String label, String text) {
        return new Caution(kind, Block.Tone.ACTION, label, text);
    }

    static Caution note(String kind, String label, String text) {
        return new Caution(kind, Block.Tone.CAUTION, label, text);
    }

    Block.Notice notice() {
        return new Block.Notice(tone, label, text);
    }
}
