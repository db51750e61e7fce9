package tautlog.config;

/**
 * One thing that is wrong in a file.
 *
 * @param file name as the reader was given it
 * @param line from 1
 * @param key dotted path: {@code gear.choker-1.wll}
 * @param found what was found, without a full stop: {@code "12,5 kN" is not a force}
 * @param allowed the next step and what is allowed, whole sentences
 */
public record Problem(String file, int line, String key, String found, String allowed) {
    @Override
    public String toString() {
        String where = file + ":" + line + ": " + (key.isEmpty() ? "" : key + ": ");
        return where + found + "." + (allowed.isEmpty() ? "" : "\n  " + allowed);
    }
}
