package tautlog.logger.control;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tautlog.logger.clock.BoardClock;
import tautlog.logger.control.Status.DiskStatus;
import tautlog.logger.control.Status.GpsStatus;
import tautlog.logger.drive.DriveState;
import tautlog.logger.gps.GpsFix.Place;
import tautlog.logger.live.LiveReadings;
import tautlog.logger.publish.PublisherState;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.wire.LineCounts;
import tautlog.sample.Tally;

/** A {@link Status} as one JSON document. Keys are added, never renamed; what is not known is null. */
final class StatusJson {
    private StatusJson() {}

    static JsonObject of(Status status) {
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.addProperty("program", status.program());
        json.addProperty("running", true);
        json.addProperty("closed", status.closed());
        json.addProperty("written", status.written().toString());
        json.addProperty("started", status.started().toString());
        json.addProperty("winch", status.winch());
        json.addProperty("port", status.port());
        json.addProperty("port_open", status.portOpen());
        json.addProperty("hang_ups", status.hangUps());
        json.addProperty("beacon", status.beacon());
        json.addProperty("lamp", status.hasLamp());
        json.add("clock", clock(status.clock()));
        json.add(
                "shaft_line", status.shaft().<JsonElement>map(StatusJson::shaft).orElse(JsonNull.INSTANCE));
        json.add("line", line(status));
        json.add("outing", status.outing().<JsonElement>map(StatusJson::outing).orElse(JsonNull.INSTANCE));
        json.add("gps", status.gps().<JsonElement>map(StatusJson::gps).orElse(JsonNull.INSTANCE));
        JsonObject publish = new JsonObject();
        new TreeMap<>(status.publishers()).forEach((name, state) -> publish.add(name, publisher(state)));
        json.add("publish", publish);
        json.add("disk", disk(status.disk()));
        json.add("drive", status.drive().<JsonElement>map(StatusJson::drive).orElse(JsonNull.INSTANCE));
        return json;
    }

    private static JsonObject clock(Status.ClockStatus clock) {
        JsonObject json = new JsonObject();
        json.addProperty("source", clock.source());
        json.add(
                "utc_known", clock.state().<JsonElement>map(StatusJson::isKnown).orElse(JsonNull.INSTANCE));
        json.add("words", text(clock.state().map(BoardClock.State::words)));
        json.addProperty("times_set", clock.timesSet());
        return json;
    }

    private static JsonElement isKnown(BoardClock.State state) {
        return new JsonPrimitive(state == BoardClock.State.KNOWN);
    }

    private static JsonObject publisher(PublisherState state) {
        JsonObject json = new JsonObject();
        json.addProperty("state", state.word().name().toLowerCase(Locale.ROOT));
        json.add("since", text(state.since().map(Instant::toString)));
        json.add("why", text(state.why()));
        json.addProperty("lag_items", state.lagItems());
        json.add("lag_s", number(state.lagSeconds()));
        json.add("last_position", text(state.lastPosition()));
        json.addProperty("refused", state.refused());
        json.addProperty("outings_passed_over", state.passedOver());
        json.addProperty("unreadable", state.unreadable());
        return json;
    }

    private static JsonObject shaft(Status.ShaftLine line) {
        JsonObject json = new JsonObject();
        json.addProperty("port", line.port());
        json.addProperty("port_open", line.open());
        json.addProperty("hang_ups", line.hangUps());
        return json;
    }

    private static JsonObject outing(LiveReadings outing) {
        JsonObject json = new JsonObject();
        json.addProperty("instrument", outing.instrument());
        json.addProperty("samples", outing.samples());
        json.add("last_number", number(outing.lastNumber()));
        json.add("last_sample", text(outing.lastSample().map(Instant::toString)));
        json.add("silent_s", number(outing.silentSeconds()));
        json.add("tension_n", number(outing.tensionNewtons()));
        json.add("greatest_n", number(outing.greatestNewtons()));
        json.add("share", number(outing.share()));
        json.add("shaft_rpm", number(outing.shaftRpm()));
        json.addProperty("hookup", outing.hookup().id());
        json.addProperty("hookup_by", outing.hookupBy().name().toLowerCase(Locale.ROOT));
        json.addProperty("assumed", outing.hookupBy().isAssumed());
        json.addProperty("limit_n", outing.hookup().limit().newtons());
        json.addProperty("limit_is_at_most", outing.hookup().limit().isAtMost());
        tally(json, outing.tally());
        json.addProperty("lost_by_instrument", outing.lostByInstrument());
        json.add("zero", zero(outing.zero()));
        return json;
    }

    private static JsonObject zero(LiveReadings.Zero zero) {
        JsonObject json = new JsonObject();
        json.addProperty("proven", zero.proven());
        json.addProperty("moved_n", zero.movedNewtons());
        return json;
    }

    private static JsonObject line(Status status) {
        LineCounts line = status.line();
        JsonObject json = new JsonObject();
        json.addProperty(
                "hearing", status.hearing().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        json.addProperty("hearing_words", status.hearing().words());
        json.addProperty("outing_on", line.outing() == LineCounts.OutingState.ON);
        tally(json, line.tally());
        json.addProperty("other_channel_frames", line.otherChannelFrames());
        return json;
    }

    private static void tally(JsonObject json, Tally tally) {
        json.addProperty("rejected_frames", tally.rejectedFrames());
        json.add("rejected", rejected(tally));
        json.addProperty("lost_frames", tally.lostFrames());
        json.addProperty("repeated_frames", tally.repeatedFrames());
        json.addProperty("frames_before_hello", tally.heldFrames());
    }

    private static JsonObject rejected(Tally tally) {
        JsonObject json = new JsonObject();
        tally.rejected().forEach(json::addProperty);
        return json;
    }

    private static JsonObject gps(GpsStatus gps) {
        JsonObject json = new JsonObject();
        json.addProperty("port", gps.port());
        json.addProperty("port_open", gps.portOpen());
        json.addProperty("utc_known", gps.utcKnown());
        json.add(
                "position",
                gps.place().<JsonElement>map(place -> place(place, gps.nanos())).orElse(JsonNull.INSTANCE));
        JsonObject rejected = new JsonObject();
        new TreeMap<>(gps.rejected()).forEach(rejected::addProperty);
        json.add("rejected", rejected);
        return json;
    }

    private static JsonObject place(Place place, long nanos) {
        JsonObject json = new JsonObject();
        json.addProperty("lat_deg", place.latitudeE7() / 1e7);
        json.addProperty("lon_deg", place.longitudeE7() / 1e7);
        json.addProperty("age_s", (nanos - place.nanos()) / 1e9);
        json.addProperty("satellites", place.satellites());
        return json;
    }

    private static JsonObject disk(DiskStatus disk) {
        JsonObject json = new JsonObject();
        json.addProperty("folder", disk.folder());
        json.add("file", text(disk.file()));
        json.addProperty("lag_s", disk.lagSeconds());
        json.addProperty("lost_samples", disk.lostSamples());
        json.addProperty("lost_events", disk.lostEvents());
        json.add("trouble", text(disk.trouble()));
        json.add("free_bytes", number(disk.freeBytes()));
        json.addProperty("reserve_bytes", DiskReserve.BYTES);
        json.addProperty("low", disk.low());
        json.add("last_link", text(disk.lastLink()));
        json.addProperty("keep", disk.keep().name().toLowerCase(Locale.ROOT));
        json.addProperty("thinned_outings", disk.thinning().outings());
        json.addProperty("thinned_bytes", disk.thinning().bytes());
        json.add("thinning_trouble", text(disk.thinning().trouble()));
        return json;
    }

    private static JsonObject drive(DriveState drive) {
        JsonObject json = new JsonObject();
        json.addProperty("path", drive.path().toString());
        json.addProperty("plugged", drive.plugged());
        json.addProperty("state", drive.stage().name().toLowerCase(Locale.ROOT));
        json.add("since", text(drive.at().map(Instant::toString)));
        json.addProperty("copied", drive.tally().copied());
        json.addProperty("kept", drive.tally().kept());
        json.addProperty("read_back", drive.tally().readBack().name().toLowerCase(Locale.ROOT));
        JsonArray trouble = new JsonArray();
        drive.tally().trouble().forEach(trouble::add);
        json.add("trouble", trouble);
        return json;
    }

    private static JsonElement number(Optional<Long> value) {
        return value.<JsonElement>map(JsonPrimitive::new).orElse(JsonNull.INSTANCE);
    }

    private static JsonElement number(OptionalDouble value) {
        return value.isPresent() ? new JsonPrimitive(value.getAsDouble()) : JsonNull.INSTANCE;
    }

    private static JsonElement text(Optional<String> value) {
        return value.<JsonElement>map(JsonPrimitive::new).orElse(JsonNull.INSTANCE);
    }
}
