package tautlog.logger.publish.mqtt;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.StringJoiner;
import tautlog.detect.Second;
import tautlog.logger.publish.Item;

/** The payloads: a second as SenML (RFC 8428), the rest as one object. */
final class Messages {
    private Messages() {}

    /** An array of records; {@code bn} is the winch, {@code bt} the second's beginning. An unknown shaft speed is left out. */
    static String senml(String winch, Item.OfSecond second) {
        JsonArray pack = new JsonArray();
        JsonObject first = number("least", "N", second.leastNewtons());
        first.addProperty("bn", winch + ":");
        first.addProperty("bt", BigDecimal.valueOf(second.utcMicros(), 6));
        pack.add(first);
        pack.add(number("mean", "N", second.meanNewtons()));
        pack.add(number("greatest", "N", second.greatestNewtons()));
        if (Double.isFinite(second.share())) {
            pack.add(number("share", "/", second.share()));
        }
        second.shaftRpm().ifPresent(rpm -> pack.add(number("shaft", "1/min", rpm)));
        pack.add(text("hookup", second.hookup()));
        pack.add(text("flags", flags(second.flags())));
        pack.add(text("position", second.position()));
        return pack.toString();
    }

    private static JsonObject number(String name, String unit, double value) {
        JsonObject entry = new JsonObject();
        entry.addProperty("n", name);
        entry.addProperty("u", unit);
        entry.addProperty("v", value);
        return entry;
    }

    private static JsonObject text(String name, String value) {
        JsonObject entry = new JsonObject();
        entry.addProperty("n", name);
        entry.addProperty("vs", value);
        return entry;
    }

    static String finding(Item.OfFinding finding) {
        JsonObject json = new JsonObject();
        json.addProperty("kind", finding.kind());
        json.addProperty("position", finding.position());
        finding.fields().entrySet().forEach(field -> json.add(field.getKey(), field.getValue()));
        return json.toString();
    }

    static String meters(Item.OfMeters meters) {
        JsonObject json = new JsonObject();
        json.addProperty("position", meters.position());
        meters.fields().entrySet().forEach(field -> json.add(field.getKey(), field.getValue()));
        return json.toString();
    }

    /** The words of {@code export --seconds}. */
    private static String flags(int flags) {
        StringJoiner words = new StringJoiner(" ");
        word(words, flags, Second.GAP, "gap");
        word(words, flags, Second.END_STOP, "end-stop");
        word(words, flags, Second.OPEN_BRIDGE, "open-bridge");
        word(words, flags, Second.OVER_LIMIT, "over-limit");
        word(words, flags, Second.AT_MOST, "limit-is-at-most");
        return words.toString();
    }

    private static void word(StringJoiner words, int flags, int bit, String word) {
        if ((flags & bit) != 0) {
            words.add(word);
        }
    }

    /** The winch's name as one level of a topic and as a name of SenML. */
    static String level(String winch) {
        String plain =
                winch.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9._-]+", "-").replaceAll("^[._-]+", "");
        return plain.isEmpty() ? "winch" : plain;
    }
}
