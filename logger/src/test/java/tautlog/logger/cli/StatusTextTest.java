package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import org.junit.jupiter.api.Test;
import tautlog.quantity.ForceUnit;

/** The words of {@code status}, from a document as a logger sends it. */
class StatusTextTest {
    private static final String RUNNING = """
            { "schema": 1, "program": "tautlogd 1.0", "running": true, "closed": false,
              "written": "2026-05-04T07:00:10.572826040Z", "started": "2026-05-04T07:00:00.017193163Z",
              "winch": "upper-landing", "port": "/dev/ttyACM0", "port_open": true, "hang_ups": 1, "beacon": "clear",
              "outing": { "instrument": "TL-0001", "samples": 5000, "last_number": 4999,
                "last_sample": "2026-05-04T07:00:10.314867Z", "silent_s": 0.1, "tension_n": 12000.4, "greatest_n": 13000,
                "share": 0.65, "shaft_rpm": 540.2, "hookup": "straight", "hookup_by": "default", "assumed": true,
                "limit_n": 20000.0, "limit_is_at_most": false, "rejected_frames": 3, "rejected": { "BAD_CRC": 3 },
                "lost_frames": 3, "repeated_frames": 0, "frames_before_hello": 0, "lost_by_instrument": 0,
                "zero": { "proven": false, "moved_n": 0.0 } },
              "disk": { "folder": "/srv/recordings", "file": "/srv/recordings/upper-landing_2026-05-04.tautlog",
                "lag_s": 0.32, "lost_samples": 0, "lost_events": 0, "trouble": null, "free_bytes": 1073741824,
                "reserve_bytes": 67108864, "low": false, "last_link": "00ff" } }
            """;

    @Test
    void saysHowThingsStandInTheRigsUnitAndToTheSecond() {
        assertEquals("""
                logger       running, winch upper-landing, tautlogd 1.0
                as of        2026-05-04T07:00:10Z, started 2026-05-04T07:00:00Z
                port         /dev/ttyACM0 open, lost and opened again once
                beacon       clear (a clear beacon is no permission to approach)
                instrument   TL-0001, 5000 samples
                last sample  number 4999 at 2026-05-04T07:00:10Z
                tension      12.0 kN, greatest of the last second 65 % of limit
                zero         UNPROVEN: no slack was proven in this outing yet
                shaft        540 rpm
                hookup       straight (assumed), limit 20.0 kN
                line         frames rejected 3 (BAD_CRC 3), lost 3, repeated 0, before hello 0; samples lost by the instrument 0
                recording    /srv/recordings/upper-landing_2026-05-04.tautlog
                disk         takes the recording, 1024 MB free
                lag          0.3 s, samples lost to a stalled disk 0, other events 0
                last link    00ff
                """, text(RUNNING));
    }

    @Test
    void saysHowFarAProvenZeroWasMoved() {
        String moved =
                text(RUNNING.replace("\"proven\": false, \"moved_n\": 0.0", "\"proven\": true, \"moved_n\": -55.0"));

        assertSays(moved, "zero         proven, moved by -0.06 kN\n");
    }

    @Test
    void showsWhatIsNotKnownAsUnknown() {
        String silent = text(RUNNING.replace("\"tension_n\": 12000.4", "\"tension_n\": null")
                .replace("\"silent_s\": 0.1", "\"silent_s\": 42.4")
                .replace("\"greatest_n\": 13000", "\"greatest_n\": null")
                .replace("\"share\": 0.65", "\"share\": null")
                .replace("\"shaft_rpm\": 540.2", "\"shaft_rpm\": null")
                .replace("\"last_sample\": \"2026-05-04T07:00:10.314867Z\"", "\"last_sample\": null"));

        assertSays(silent, "last sample  number 4999, time unknown\n");
        assertSays(silent, "tension      unknown: no sample came for 42 s\n");
        assertSays(silent, "shaft        unknown\n");
    }

    @Test
    void saysThatNoInstrumentWasHeardAndThatThePortIsClosed() {
        String deaf = text(RUNNING.replaceFirst("(?s)\"outing\": \\{.*?\\} *\\},", "\"outing\": null,")
                .replace("\"port_open\": true", "\"port_open\": false"));

        assertSays(deaf, "outing       none: no instrument has been heard\n");
        assertSays(deaf, "port         /dev/ttyACM0 NOT OPEN, ");
    }

    @Test
    void saysWhatTheLineLostBeforeAnyHelloAndThatAnotherChannelIsLeftOut() {
        String unheard = text(RUNNING.replaceFirst("(?s)\"outing\": \\{.*?\\} *\\},", """
                "line": { "outing_on": false, "rejected_frames": 4, "rejected": { "BAD_CRC": 1, "BAD_COBS": 3 },
                "lost_frames": 2, "repeated_frames": 0, "frames_before_hello": 7, "other_channel_frames": 9 },
                "outing": null,"""));

        assertSays(
                unheard,
                "no outing on frames rejected 4 (BAD_CRC 1, BAD_COBS 3), lost 2, repeated 0, before hello 7\n");
        assertSays(unheard, "channels     frames of channels other than the line's, left out: 9\n");
    }

    @Test
    void saysWhatTheClockIsWorthAndThatTheLineIsNotUnderstood() {
        String odd = text(RUNNING.replace("\"outing\": {", """
                "clock": { "source": "host", "utc_known": false, "words": "UTC unknown: why", "times_set": 2 },
                "line": { "hearing": "not-understood", "hearing_words": "what comes is not understood", "outing_on": true },
                "outing": {"""));

        assertSays(odd, "clock        UTC unknown: why, set 2 times since the start\n");
        assertSays(odd, "HEARING      what comes is not understood\n");
        assertSays(text(RUNNING.replace("\"outing\": {", """
                "clock": { "source": "device", "utc_known": null, "words": null, "times_set": 0 },
                "outing": {""")), "clock        the instrument's ticks\n");
    }

    @Test
    void saysAtLeastAndAtMostWhereTheLimitIsABound() {
        String bound = text(RUNNING.replace("\"limit_is_at_most\": false", "\"limit_is_at_most\": true"));

        assertSays(bound, "greatest of the last second at least 65 % of limit\n");
        assertSays(bound, "limit at most 20.0 kN\n");
    }

    @Test
    void tellsALoggerThatStoppedInOrderFromOneThatWasCutOff() {
        String stopped = RUNNING.replace("\"running\": true", "\"running\": false");

        assertSays(text(stopped.replace("\"closed\": false", "\"closed\": true")), "not running, stopped in order");
        assertSays(
                text(stopped), "not running, cut off (power or kill): the next start finishes what it was recording");
    }

    @Test
    void saysWhatTheDiskSaysAndThatItIsNearlyFull() {
        String low = text(RUNNING.replace("\"low\": false", "\"low\": true").replace("1073741824", "33554432"));
        String full = text(RUNNING.replace("\"trouble\": null", "\"trouble\": \"the disk is full. Free space\""));

        assertSays(low, "32 MB free: NEARLY FULL, less than the reserve of 64 MB. Copy old recordings elsewhere");
        assertSays(full, "disk         TROUBLE: the disk is full. Free space");
    }

    @Test
    void saysWhetherTheDriveMayBePulled() {
        assertSays(drive("none", false, ""), "drive        none was there since the start, at /media/tautlog\n");
        assertSays(drive("writing", true, ""), "drive        BEING WRITTEN since 2026-05-04T17:00:00Z: leave it in\n");
        assertSays(
                drive("verified", true, ""),
                "drive        finished 2026-05-04T17:00:00Z: 3 copied and verified, read back from the drive, 2 there"
                        + " already, still in\n");
        assertSays(
                drive("trouble", false, "\"no room\", \"no time\""),
                "drive        TROUBLE 2026-05-04T17:00:00Z: no room. no time. 3 copied and verified, read back from the"
                        + " drive, 2 there already, pulled out since\n");
    }

    private static String drive(String state, boolean plugged, String trouble) {
        String drive = """
                , "drive": { "path": "/media/tautlog", "plugged": %s, "state": "%s", "since": "2026-05-04T17:00:00.5Z",
                  "copied": 3, "kept": 2, "read_back": "drive", "trouble": [%s] } }
                """.formatted(plugged, state, trouble);
        return text(RUNNING.stripTrailing().replaceAll("}$", "") + drive);
    }

    @Test
    void saysThatARecordingCannotBeRead() {
        assertSays(
                publishing("0"),
                "mqtt         connected since 2026-05-04T07:00:00Z, 0 seconds and findings to publish,"
                        + " the oldest 0 s old\n");
        assertSays(publishing("1"), " s old, 1 RECORDING CANNOT BE READ\n");
        assertSays(publishing("2"), " s old, 2 RECORDINGS CANNOT BE READ\n");
    }

    @Test
    void saysThatTheAgeOfWhatWaitsForAClockIsNotKnown() {
        String publish = """
                , "publish": { "mqtt": { "state": "waiting", "since": "2026-05-04T07:00:00Z", "why": null,
                  "lag_items": 12, "lag_s": null, "last_position": null, "refused": 0, "outings_passed_over": 0,
                  "unreadable": 0 } } }
                """;

        assertSays(
                text(RUNNING.stripTrailing().replaceAll("}$", "") + publish),
                "waits for the first sample, 12 seconds and findings to publish, the age of the oldest is not known\n");
    }

    private static String publishing(String unreadable) {
        String publish = """
                , "publish": { "mqtt": { "state": "connected", "since": "2026-05-04T07:00:00Z", "why": null,
                  "lag_items": 0, "lag_s": 0.0, "last_position": null, "refused": 0, "outings_passed_over": 0,
                  "unreadable": %s } } }
                """.formatted(unreadable);
        return text(RUNNING.stripTrailing().replaceAll("}$", "") + publish);
    }

    @Test
    void readsTheDocumentOfAnOlderLoggerToo() {
        String older = text(RUNNING.replace("\"reserve_bytes\": 67108864, \"low\": false, ", "")
                .replace("\"silent_s\": 0.1, ", ""));

        assertEquals(text(RUNNING), older);
    }

    private static String text(String document) {
        return StatusText.of(JsonParser.parseString(document).getAsJsonObject(), ForceUnit.KN);
    }

    private static void assertSays(String text, String words) {
        assertTrue(text.contains(words), text);
    }
}
