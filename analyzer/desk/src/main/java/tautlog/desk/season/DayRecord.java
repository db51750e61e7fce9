package tautlog.desk.season;

import com.google.gson.JsonObject;

/**
 * What an analysis said of a day.
 *
 * @param stamp of the recordings it was made from
 * @param summary a line of the season's overview
 * @param report the document of {@code report --json}, file names without their folders
 * @param page the words of the report
 */
public record DayRecord(String stamp, JsonObject summary, JsonObject report, JsonObject page) {
    static DayRecord parse(JsonObject json) {
        return new DayRecord(
                json.get("stamp").getAsString(),
                json.getAsJsonObject("summary"),
                json.getAsJsonObject("report"),
                json.getAsJsonObject("page"));
    }

    JsonObject json() {
        JsonObject json = new JsonObject();
        json.addProperty("stamp", stamp);
        json.add("summary", summary);
        json.add("report", report);
        json.add("page", page);
        return json;
    }
}
