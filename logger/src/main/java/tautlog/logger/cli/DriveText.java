package tautlog.logger.cli;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/** What {@code status} says of the USB drive. */
final class DriveText {
    private DriveText() {}

    /** One line, without its end. */
    static String of(JsonObject drive) {
        String state = StatusText.plain(drive, "state");
        if (state.equals("none")) {
            return "none was there since the start, at " + StatusText.plain(drive, "path");
        }
        String since = StatusText.time(StatusText.plain(drive, "since"));
        String place = StatusText.flag(drive, "plugged") ? ", still in" : ", pulled out since";
        if (state.equals("writing")) {
            return "BEING WRITTEN since " + since + (StatusText.flag(drive, "plugged") ? ": leave it in" : place);
        }
        String done = counted(drive) + place;
        return state.equals("verified")
                ? "finished " + since + ": " + done
                : "TROUBLE " + since + ": " + sentences(drive.getAsJsonArray("trouble")) + ". " + done;
    }

    private static String counted(JsonObject drive) {
        String kept = ", " + StatusText.plain(drive, "kept") + " there already";
        String copied = StatusText.plain(drive, "copied");
        if (copied.equals("0")) {
            return "0 copied" + kept;
        }
        return copied + " copied and verified"
                + (StatusText.plain(drive, "read_back").equals("drive") ? ", read back from the drive" : "") + kept;
    }

    private static String sentences(JsonArray trouble) {
        return StreamSupport.stream(trouble.spliterator(), false)
                .map(JsonElement::getAsString)
                .collect(Collectors.joining(". "));
    }
}
