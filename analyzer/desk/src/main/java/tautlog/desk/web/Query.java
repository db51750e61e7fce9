package tautlog.desk.web;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** What stands behind the question mark of an address: known keys, each once. */
final class Query {
    private static final Set<String> KEYS = Set.of(
            "winch",
            "day",
            "from",
            "to",
            "columns",
            "outing",
            "hookup",
            "rig",
            "calibration",
            "log",
            "ground",
            "friction",
            "slope",
            "slope-plus-minus",
            "block-angle",
            "units");

    private final Map<String, String> values = new TreeMap<>();

    private Query() {}

    static Query parse(Optional<String> raw) throws RefusedException {
        Query query = new Query();
        for (String pair : raw.orElse("").split("&", -1)) {
            if (!pair.isEmpty()) {
                query.add(pair);
            }
        }
        return query;
    }

    private void add(String pair) throws RefusedException {
        int equals = pair.indexOf('=');
        String key = decoded(equals < 0 ? pair : pair.substring(0, equals));
        if (!KEYS.contains(key)) {
            throw new RefusedException(400, "The address holds a key that is not known.");
        }
        if (values.put(key, equals < 0 ? "" : decoded(pair.substring(equals + 1))) != null) {
            throw new RefusedException(400, key + " stands in the address twice.");
        }
    }

    private static String decoded(String text) throws RefusedException {
        try {
            return URLDecoder.decode(text, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw new RefusedException(400, "The address is not written as addresses are.");
        }
    }

    Optional<String> text(String key) {
        return Optional.ofNullable(values.get(key)).filter(value -> !value.isEmpty());
    }

    String required(String key) throws RefusedException {
        return text(key).orElseThrow(() -> new RefusedException(400, "The address lacks " + key + "."));
    }

    /** A whole number from {@code least} to {@code greatest}. */
    long number(String key, long least, long greatest) throws RefusedException {
        try {
            long value = Long.parseLong(required(key));
            if (value >= least && value <= greatest) {
                return value;
            }
        } catch (NumberFormatException e) {
            throw new RefusedException(400, key + " must be a whole number.");
        }
        throw new RefusedException(400, key + " must be " + least + " to " + greatest + ".");
    }

    /** Whether a switch is on: {@code given} or absent. */
    boolean isGiven(String key) throws RefusedException {
        Optional<String> value = text(key);
        if (value.isPresent() && !value.get().equals("given")) {
            throw new RefusedException(400, key + " must be \"given\", or be left out.");
        }
        return value.isPresent();
    }
}
