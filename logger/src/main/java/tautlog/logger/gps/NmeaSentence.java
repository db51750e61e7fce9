package tautlog.logger.gps;

import java.util.List;

/**
 * One line that passed its checksum: the exclusive or of all characters between {@code $} and {@code *}, two hexadecimal digits.
 *
 * @param fields the first is talker and kind, like {@code GPRMC}; fields may be empty
 */
record NmeaSentence(List<String> fields) {
    /** Chosen: NMEA 0183 allows 82 characters; some receivers send more digits. */
    static final int LONGEST = 120;

    /** What becomes of a line: a sentence, or a reason. */
    interface Taker {
        void sentence(NmeaSentence sentence);

        void rejected(NmeaFault fault);
    }

    NmeaSentence {
        fields = List.copyOf(fields);
    }

    /** @param line without its line end */
    static void read(String line, Taker taker) {
        int star = line.length() - 3;
        if (!line.startsWith("$")) {
            taker.rejected(NmeaFault.NO_START);
        } else if (star < 1 || line.charAt(star) != '*') {
            taker.rejected(NmeaFault.NO_CHECKSUM);
        } else if (checksum(line.substring(1, star)) != hexadecimal(line.substring(star + 1))) {
            taker.rejected(NmeaFault.BAD_CHECKSUM);
        } else {
            taker.sentence(new NmeaSentence(List.of(line.substring(1, star).split(",", -1))));
        }
    }

    private static int checksum(String between) {
        int sum = 0;
        for (int i = 0; i < between.length(); i++) {
            sum ^= between.charAt(i);
        }
        return sum;
    }

    /** −1 when it is none. */
    private static int hexadecimal(String two) {
        int high = Character.digit(two.charAt(0), 16);
        int low = Character.digit(two.charAt(1), 16);
        return high < 0 || low < 0 ? -1 : 16 * high + low;
    }

    /** {@code RMC}, {@code GGA}; empty for a maker's own sentence. */
    String kind() {
        String name = fields.get(0);
        return name.length() == 5 && !name.startsWith("P") ? name.substring(2) : "";
    }

    int size() {
        return fields.size();
    }

    /** Field {@code i}, 0 the name; empty when the sentence ends before it. */
    String field(int i) {
        return i < fields.size() ? fields.get(i) : "";
    }
}
