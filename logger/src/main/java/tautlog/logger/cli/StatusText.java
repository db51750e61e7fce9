package tautlog.logger.cli;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.quantity.ForceUnit;

/** A status document in words. */
final class StatusText {
    private final StringBuilder text = new StringBuilder();
    private final ForceUnit unit;

    private StatusText(ForceUnit unit) {
        this.unit = unit;
    }

    /** Some lines, each with its end. */
    static String of(JsonObject status, ForceUnit unit) {
        StatusText words = new StatusText(unit);
        words.logger(status);
        object(status, "outing").ifPresent(words::outing);
        object(status, "line").ifPresent(words::withoutOuting);
        object(status, "gps").ifPresent(words::gps);
        object(status, "disk").ifPresent(words::disk);
        object(status, "publish").ifPresent(words::publishers);
        object(status, "drive").ifPresent(drive -> words.line("drive", DriveText.of(drive)));
        return words.text.toString();
    }

    private void logger(JsonObject status) {
        line("logger", state(status) + ", winch " + plain(status, "winch") + ", " + plain(status, "program"));
        line("as of", time(plain(status, "written")) + ", started " + time(plain(status, "started")));
        line(
                "port",
                plain(status, "port") + (flag(status, "port_open") ? " open" : " NOT OPEN") + ", lost and opened again "
                        + times(plain(status, "hang_ups")));
        line("beacon", plain(status, "beacon") + " (a clear beacon is no permission to approach)" + lamp(status));
        object(status, "clock").ifPresent(this::clock);
        object(status, "shaft_line").ifPresent(this::shaftLine);
        if (object(status, "outing").isEmpty()) {
            line("outing", "none: no instrument has been heard");
        }
    }

    private static String lamp(JsonObject status) {
        return known(status, "lamp").filter("false"::equals).isPresent()
                ? "; NO LAMP shows it: this kind of instrument has none"
                : "";
    }

    private void clock(JsonObject clock) {
        line(
                "clock",
                known(clock, "words").orElse("the instrument's ticks")
                        + known(clock, "times_set")
                                .filter(times -> !times.equals("0"))
                                .map(times -> ", set " + times(times) + " since the start")
                                .orElse(""));
    }

    private void shaftLine(JsonObject shaft) {
        line(
                "shaft port",
                plain(shaft, "port") + (flag(shaft, "port_open") ? " open" : " NOT OPEN") + ", lost and opened again "
                        + times(plain(shaft, "hang_ups")));
    }

    private static String state(JsonObject status) {
        if (flag(status, "running")) {
            return "running";
        }
        return flag(status, "closed")
                ? "not running, stopped in order"
                : "not running, cut off (power or kill): the next start finishes what it was recording";
    }

    private void outing(JsonObject outing) {
        line("instrument", plain(outing, "instrument") + ", " + plain(outing, "samples") + " samples");
        line(
                "last sample",
                known(outing, "last_number").map(n -> "number " + n).orElse("none")
                        + known(outing, "last_sample")
                                .map(at -> " at " + time(at))
                                .orElse(", time unknown"));
        line(
                "tension",
                known(outing, "tension_n").map(this::force).orElseGet(() -> "unknown" + silence(outing))
                        + known(outing, "share")
                                .map(share -> String.format(
                                        Locale.ROOT,
                                        ", greatest of the last second %s%.0f %% of limit",
                                        flag(outing, "limit_is_at_most") ? "at least " : "",
                                        100 * Double.parseDouble(share)))
                                .orElse(""));
        object(outing, "zero").ifPresent(this::zero);
        line(
                "shaft",
                known(outing, "shaft_rpm")
                        .map(rpm -> String.format(Locale.ROOT, "%.0f rpm", Double.parseDouble(rpm)))
                        .orElse("unknown"));
        line(
                "hookup",
                plain(outing, "hookup") + (flag(outing, "assumed") ? " (assumed)" : "") + ", limit "
                        + (flag(outing, "limit_is_at_most") ? "at most " : "") + force(plain(outing, "limit_n")));
        line("line", losses(outing) + "; samples lost by the instrument " + plain(outing, "lost_by_instrument"));
    }

    private void zero(JsonObject zero) {
        double moved = Double.parseDouble(known(zero, "moved_n").orElse("0"));
        line(
                "zero",
                (flag(zero, "proven") ? "proven" : "UNPROVEN: no slack was proven in this outing yet")
                        + (moved == 0 ? "" : ", moved by " + force(Double.toString(moved))));
    }

    /** What the line brought to no use, said once more when no outing took it or another channel was heard. */
    private void withoutOuting(JsonObject line) {
        known(line, "hearing")
                .filter(hearing -> !hearing.equals("understood"))
                .ifPresent(hearing -> line("HEARING", plain(line, "hearing_words")));
        if (!flag(line, "outing_on")) {
            line("no outing on", losses(line));
        }
        known(line, "other_channel_frames")
                .filter(n -> !n.equals("0"))
                .ifPresent(n -> line("channels", "frames of channels other than the line's, left out: " + n));
    }

    private static String losses(JsonObject counts) {
        return "frames rejected " + plain(counts, "rejected_frames") + kinds(counts) + ", lost "
                + plain(counts, "lost_frames") + ", repeated " + plain(counts, "repeated_frames") + ", before hello "
                + plain(counts, "frames_before_hello");
    }

    private static String silence(JsonObject outing) {
        return known(outing, "silent_s")
                .map(seconds -> String.format(Locale.ROOT, ": no sample came for %.0f s", Double.parseDouble(seconds)))
                .orElse(": no sample has come");
    }

    private static String times(String n) {
        return n.equals("1") ? "once" : n + " times";
    }

    /** To the second; UTC, as the Z says. */
    static String time(String iso) {
        return iso.replaceFirst("\\.\\d+Z$", "Z");
    }

    private static String kinds(JsonObject outing) {
        String kinds = object(outing, "rejected").stream()
                .flatMap(rejected -> rejected.entrySet().stream())
                .map(kind -> kind.getKey() + " " + kind.getValue().getAsString())
                .collect(Collectors.joining(", "));
        return kinds.isEmpty() ? "" : " (" + kinds + ")";
    }

    private void gps(JsonObject gps) {
        String place = object(gps, "position")
                .map(position -> String.format(
                        Locale.ROOT,
                        "latitude %.6f°, longitude %.6f°, %.0f s ago",
                        Double.parseDouble(plain(position, "lat_deg")),
                        Double.parseDouble(plain(position, "lon_deg")),
                        Double.parseDouble(plain(position, "age_s"))))
                .orElse("position unknown");
        line(
                "gps",
                place + (flag(gps, "utc_known") ? ", UTC known" : ", UTC unknown")
                        + (flag(gps, "port_open") ? "" : ", " + plain(gps, "port") + " NOT OPEN")
                        + ", lines not taken:" + (kinds(gps).isEmpty() ? " none" : kinds(gps)));
    }

    private void publishers(JsonObject publish) {
        publish.keySet().forEach(name -> object(publish, name).ifPresent(outlet -> publisher(name, outlet)));
    }

    private void publisher(String name, JsonObject outlet) {
        String state = plain(outlet, "state");
        if (state.equals("off")) {
            return;
        }
        String refused = plain(outlet, "refused");
        String passedOver = plain(outlet, "outings_passed_over");
        line(
                name,
                (state.equals("waiting")
                                ? "waits for the first sample"
                                : state + " since " + time(plain(outlet, "since")))
                        + known(outlet, "why").map(why -> " (" + why + ")").orElse("")
                        + ", " + plain(outlet, "lag_items") + " seconds and findings to publish, "
                        + known(outlet, "lag_s").map(StatusText::oldest).orElse("the age of the oldest is not known")
                        + known(outlet, "last_position")
                                .map(position -> ", last " + position)
                                .orElse("")
                        + (refused.equals("0") ? "" : ", REFUSED FOR GOOD by the server: " + refused)
                        + (passedOver.equals("0") ? "" : ", outings never dated and passed over: " + passedOver)
                        + known(outlet, "unreadable")
                                .map(StatusText::unreadable)
                                .orElse(""));
    }

    private static String oldest(String seconds) {
        return String.format(Locale.ROOT, "the oldest %.0f s old", Double.parseDouble(seconds));
    }

    private static String unreadable(String count) {
        return switch (count) {
            case "0" -> "";
            case "1" -> ", 1 RECORDING CANNOT BE READ";
            default -> ", " + count + " RECORDINGS CANNOT BE READ";
        };
    }

    private void disk(JsonObject disk) {
        line("recording", known(disk, "file").orElse("none yet"));
        line(
                "disk",
                known(disk, "trouble").map(trouble -> "TROUBLE: " + trouble).orElse("takes the recording")
                        + room(disk));
        line(
                "lag",
                String.format(Locale.ROOT, "%.1f s", Double.parseDouble(plain(disk, "lag_s")))
                        + ", samples lost to a stalled disk " + plain(disk, "lost_samples") + ", other events "
                        + plain(disk, "lost_events"));
        thinned(disk);
        line("last link", known(disk, "last_link").orElse("none yet"));
    }

    /** Only where readings may go, or went. */
    private void thinned(JsonObject disk) {
        if (known(disk, "keep").filter("findings"::equals).isPresent()) {
            line(
                    "thinned",
                    plain(disk, "thinned_outings") + " outings since the start, "
                            + megabytes(disk, "thinned_bytes").orElse("unknown") + " given back"
                            + known(disk, "thinning_trouble")
                                    .map(trouble -> "; TROUBLE: " + trouble)
                                    .orElse(""));
        }
    }

    private static String room(JsonObject disk) {
        String free =
                megabytes(disk, "free_bytes").map(mb -> ", " + mb + " free").orElse(", free room unknown");
        return flag(disk, "low")
                ? free + ": NEARLY FULL, less than the reserve of "
                        + megabytes(disk, "reserve_bytes").orElse("64 MB")
                        + ". Copy old recordings elsewhere, check the copies with `tautlog verify`, delete them here."
                : free;
    }

    private static Optional<String> megabytes(JsonObject disk, String key) {
        return known(disk, key).map(bytes -> (Long.parseLong(bytes) >> 20) + " MB");
    }

    private String force(String newtons) {
        return unit.format(Double.parseDouble(newtons));
    }

    private void line(String name, String words) {
        text.append(String.format(Locale.ROOT, "%-12s %s%n", name, words));
    }

    static String plain(JsonObject json, String key) {
        return known(json, key).orElse("unknown");
    }

    private static Optional<String> known(JsonObject json, String key) {
        JsonElement value = json.get(key);
        return value == null || value.isJsonNull() ? Optional.empty() : Optional.of(value.getAsString());
    }

    static boolean flag(JsonObject json, String key) {
        return known(json, key).map(Boolean::parseBoolean).orElse(false);
    }

    private static Optional<JsonObject> object(JsonObject json, String key) {
        JsonElement value = json.get(key);
        return value != null && value.isJsonObject() ? Optional.of(value.getAsJsonObject()) : Optional.empty();
    }
}
