package tautlog.service;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tautlog.config.NearestKey;

/** The keys of one line of the ledger, asked for one by one; collects all that is wrong. Not thread-safe. */
final class LineFields {
    private final JsonObject json;
    private final ZoneId zone;
    private final List<String> problems = new ArrayList<>();
    private final Set<String> known = new TreeSet<>();

    LineFields(JsonObject json, ZoneId zone) {
        this.json = json;
        this.zone = zone;
    }

    /** What makes the line unusable, one clause each. */
    List<String> problems() {
        return problems;
    }

    void problem(String key, String found) {
        problems.add('"' + key + "\" " + found);
    }

    /** Keys that nobody asked for, each with what may have been meant. */
    List<String> unknown() {
        return json.keySet().stream()
                .filter(key -> !known.contains(key))
                .map(key -> '"' + shown(key) + "\" is not a known key; it stays in the file and is not used."
                        + NearestKey.to(key, known)
                                .map(near -> " Did you mean \"" + near + "\"?")
                                .orElse(""))
                .toList();
    }

    Optional<String> text(String key) {
        Optional<JsonElement> written = written(key);
        if (written.isEmpty()) {
            return Optional.empty();
        }
        if (written.get() instanceof JsonPrimitive text
                && text.isString()
                && !text.getAsString().isBlank()) {
            return Optional.of(text.getAsString());
        }
        problem(key, "is not a text in quotes");
        return Optional.empty();
    }

    Optional<String> requiredText(String key) {
        if (written(key).isEmpty()) {
            problem(key, "is missing");
        }
        return text(key);
    }

    Optional<Instant> time(String key, WrittenTime end) {
        Optional<String> text = text(key);
        Optional<Instant> time = text.flatMap(written -> end.parse(written, zone));
        if (text.isPresent() && time.isEmpty()) {
            problem(key, "is not a time (\"" + shown(text.get()) + "\"). " + WrittenTime.ALLOWED);
        }
        return time;
    }

    Optional<Instant> requiredTime(String key, WrittenTime end) {
        if (written(key).isEmpty()) {
            problem(key, "is missing");
        }
        return time(key, end);
    }

    /** A number from 0. */
    Optional<BigDecimal> number(String key) {
        Optional<JsonElement> written = written(key);
        Optional<BigDecimal> number = written.flatMap(LineFields::asNumber);
        if (written.isPresent() && number.isEmpty()) {
            problem(key, "is not a number from 0, without quotes and with a point");
        }
        return number;
    }

    /** A whole number from 0. */
    Optional<BigDecimal> whole(String key) {
        Optional<BigDecimal> number = number(key);
        if (number.isPresent() && number.get().stripTrailingZeros().scale() > 0) {
            problem(key, "is not a whole number");
            return Optional.empty();
        }
        return number;
    }

    private static Optional<BigDecimal> asNumber(JsonElement written) {
        try {
            return written instanceof JsonPrimitive number && number.isNumber()
                    ? Optional.of(number.getAsBigDecimal()).filter(value -> value.signum() >= 0)
                    : Optional.empty();
        } catch (NumberFormatException tooLong) {
            return Optional.empty();
        }
    }

    /** The texts of a list. */
    List<String> texts(String key) {
        List<String> texts = new ArrayList<>();
        Optional<JsonElement> written = written(key);
        if (written.isPresent() && written.get().isJsonArray()) {
            for (JsonElement element : written.get().getAsJsonArray()) {
                if (element instanceof JsonPrimitive text && text.isString()) {
                    texts.add(text.getAsString());
                } else {
                    problem(key, "holds what is not a text in quotes");
                }
            }
        } else if (written.isPresent()) {
            problem(key, "is not a list of texts");
        }
        return texts;
    }

    /** One of some words. */
    <T> Optional<T> oneOf(String key, Map<String, T> words) {
        Optional<String> word = requiredText(key);
        Optional<T> value = word.map(words::get);
        if (word.isPresent() && value.isEmpty()) {
            String meant = NearestKey.to(word.get(), words.keySet())
                    .map(near -> "Did you mean \"" + near + "\"? ")
                    .orElse("");
            problem(
                    key,
                    "is \"" + shown(word.get()) + "\", which is not known here. " + meant + "Allowed: "
                            + String.join(", ", new TreeSet<>(words.keySet())));
        }
        return value;
    }

    private Optional<JsonElement> written(String key) {
        known.add(key);
        return Optional.ofNullable(json.get(key)).filter(element -> !element.isJsonNull());
    }

    private static String shown(String text) {
        String line = text.replaceAll("\\p{Cntrl}", "?");
        return line.length() > 60 ? line.substring(0, 60) + "…" : line;
    }
}
