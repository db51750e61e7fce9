package tautlog.desk.season;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.nio.file.Path;
import java.util.Map;

/** Texts in which recordings are called by their names alone: who looks from elsewhere need not know where they are kept. */
final class WithoutFolder {
    private WithoutFolder() {}

    static String text(Path folder, String text) {
        return text.replace(folder + folder.getFileSystem().getSeparator(), "");
    }

    static JsonElement json(Path folder, JsonElement json) {
        if (json.isJsonObject()) {
            JsonObject object = new JsonObject();
            for (Map.Entry<String, JsonElement> entry : json.getAsJsonObject().entrySet()) {
                object.add(entry.getKey(), json(folder, entry.getValue()));
            }
            return object;
        } else if (json.isJsonArray()) {
            JsonArray array = new JsonArray();
            json.getAsJsonArray().forEach(one -> array.add(json(folder, one)));
            return array;
        } else if (json.isJsonPrimitive() && json.getAsJsonPrimitive().isString()) {
            return new JsonPrimitive(text(folder, json.getAsString()));
        }
        return json;
    }
}
