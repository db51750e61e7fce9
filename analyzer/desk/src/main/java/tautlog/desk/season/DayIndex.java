package tautlog.desk.season;

import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What analyses said of days, by day and question. Summaries stay in memory, whole records on disk where a folder can be written. Safe for
 * several threads.
 */
public final class DayIndex {
    private final Optional<Path> folder;
    private final Map<String, JsonObject> summaries = new HashMap<>();
    private final Map<String, String> stamps = new HashMap<>();
    private final Map<String, DayRecord> unkept = new HashMap<>();
    private long worked;

    DayIndex(Optional<Path> folder) {
        this.folder = folder;
    }

    private static String key(DayKey day, WhatIf whatIf) {
        return Fingerprint.of(day.winch(), day.id(), whatIf.key());
    }

    /** The day's line of the overview; empty while nothing is known. */
    public synchronized Optional<JsonObject> summary(DayKey day, WhatIf whatIf) {
        return Optional.ofNullable(summaries.get(key(day, whatIf)));
    }

    /** Whether what is known was made from recordings as they are now. */
    synchronized boolean isCurrent(DayKey day, WhatIf whatIf, String stamp) {
        String key = key(day, whatIf);
        if (!stamps.containsKey(key)) {
            read(key).ifPresent(record -> remember(key, record));
        }
        return stamp.equals(stamps.get(key));
    }

    private void remember(String key, DayRecord record) {
        stamps.put(key, record.stamp());
        summaries.put(key, record.summary());
    }

    /** All that is known of a day, perhaps of a moment ago. */
    public synchronized Optional<DayRecord> record(DayKey day, WhatIf whatIf) {
        String key = key(day, whatIf);
        DayRecord inMemory = unkept.get(key);
        return inMemory != null ? Optional.of(inMemory) : stamps.containsKey(key) ? read(key) : Optional.empty();
    }

    /** How often a day was worked out since the start: another number when a summary may be another. */
    public synchronized long worked() {
        return worked;
    }

    synchronized void put(DayKey day, WhatIf whatIf, DayRecord record) {
        worked++;
        String key = key(day, whatIf);
        remember(key, record);
        if (folder.isPresent() && write(folder.get(), key, record)) {
            unkept.remove(key);
        } else {
            unkept.put(key, record);
        }
    }

    private Optional<DayRecord> read(String key) {
        if (folder.isEmpty() || !Files.isRegularFile(file(folder.get(), key))) {
            return Optional.empty();
        }
        try {
            String text = Files.readString(file(folder.get(), key));
            return Optional.of(DayRecord.parse(JsonParser.parseString(text).getAsJsonObject()));
        } catch (IOException | JsonParseException | IllegalStateException | NullPointerException torn) {
            return Optional.empty(); // made anew
        }
    }

    private static boolean write(Path folder, String key, DayRecord record) {
        try {
            Path beside = Files.createTempFile(folder, "day", ".part");
            try {
                Files.writeString(beside, record.json().toString());
                Files.move(
                        beside, file(folder, key), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(beside);
            }
            return true;
        } catch (IOException e) {
            return false; // kept in memory
        }
    }

    private static Path file(Path folder, String key) {
        return folder.resolve(key.substring(0, 32) + ".day.json");
    }
}
