package tautlog.logger.gps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.logger.gps.GpsFix.Place;

/**
 * Sentences as published for receivers, with their checksums (gpsd's notes on NMEA and its logs, the classic sample of 1994). The
 * checksum is the exclusive or of the characters between {@code $} and {@code *} (NMEA 0183).
 */
class GpsReceiverTest {
    private static final long SECOND = 1_000_000_000L;

    private static final String GGA = "$GPGGA,092751.000,5321.6802,N,00630.3371,W,1,8,1.03,61.7,M,55.3,M,,*75";
    private static final String RMC = "$GPRMC,092751.000,A,5321.6802,N,00630.3371,W,0.06,31.66,280511,,,A*45";

    private final GpsReceiver receiver = new GpsReceiver();
    private long nanos = 5 * SECOND;

    private void hear(String... lines) {
        for (String line : lines) {
            byte[] bytes = (line + "\r\n").getBytes(StandardCharsets.ISO_8859_1);
            receiver.feed(bytes, bytes.length, nanos);
        }
    }

    /** The line with the checksum that it should have. */
    private static String right(String between) {
        int sum = between.chars().reduce(0, (a, b) -> a ^ b);
        return "$%s*%02X".formatted(between, sum);
    }

    private Optional<Place> place() {
        return receiver.place(nanos);
    }

    private Optional<Instant> utc() {
        return receiver.utcMicros(nanos).map(micros -> Instant.EPOCH.plus(micros, ChronoUnit.MICROS));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // 4807.038 N = 48.1173, 01131.000 E = 11.516667 degrees
                "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A|481173000|115166667|1994-03-23T12:35:19Z",
                // 5 321.6802 / 60, computed by hand: 53.36133667, 6.50561833
                "$GPRMC,092750.000,A,5321.6802,N,00630.3372,W,0.02,31.66,280511,,,A*43|533613367|-65056200|2011-05-28T09:27:50Z",
                "$GNRMC,001031.00,A,4404.13993,N,12118.86023,W,0.146,,100117,,,A*7B|440689988|-1213143372|2017-01-10T00:10:31Z",
                "$GNRMC,081411.000,A,5541.1955,N,03737.2872,E,0.60,301.29,260514,,,A*74|556865917|376214533|2014-05-26T08:14:11Z",
                // published with its result: 47.672735833, -122.422658833
                "$GPRMC,030000,A,4740.36415,N,12225.35953,W,000.02,059.5,160612,016.6,E*52|476727358|-1224226588|2012-06-16T03:00:00Z"
            })
    void readsPublishedSentencesOfAnyTalker(String line, int latitudeE7, int longitudeE7, String utc) {
        hear(line);

        assertEquals(new Place(nanos, latitudeE7, longitudeE7, 0, 0), place().orElseThrow());
        assertEquals(Optional.of(Instant.parse(utc)), utc());
        assertEquals(Map.of(), receiver.rejected());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47|481173000|115166667|8|9",
                "$GPGGA,081412.000,5541.1956,N,03737.2877,E,1,5,4.87,66.2,M,14.5,M,,*6A|556865933|376214617|5|49",
                "$GPGGA,092204.999,4250.5589,S,14718.5084,E,1,04,24.4,19.7,M,,,,0000*1F|-428426483|1473084733|4|244",
                // its last two fields are missing, its checksum is right
                "$GNGGA,001043.00,4404.14036,N,12118.85961,W,1,12,0.98,1113.0,M,-21.3,M*47|440690060|-1213143268|12|10"
            })
    void readsHowGoodAPlaceIs(String line, int latitudeE7, int longitudeE7, int satellites, int dilution) {
        hear(line);

        assertEquals(new Place(nanos, latitudeE7, longitudeE7, satellites, dilution), place().orElseThrow());
        assertEquals(Optional.empty(), utc(), "it has no date");
    }

    /** Published with the talker changed and the checksum left: right would be 74 and 59. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "$GNRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A",
                "$GNGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47"
            })
    void refusesAWrongChecksum(String line) {
        hear(line);
        assertNothingBut("BAD_CHECKSUM");

        hear(line.replace("*6A", "*74").replace("*47", "*59"));
        assertTrue(place().isPresent());
    }

    private void assertNothingBut(String fault) {
        assertEquals(Optional.empty(), place());
        assertEquals(Optional.empty(), utc());
        assertEquals(Map.of(fault, 1L), receiver.rejected());
    }

    @Test
    void refusesASentenceWithoutAChecksum() {
        hear(GGA.substring(0, GGA.indexOf('*')));
        assertNothingBut("NO_CHECKSUM");
    }

    @Test
    void countsOtherSentencesHalfLinesAndNoise() {
        hear("680*2,N,00630.33", right("GPGSV,1,1,00"), right("PUBX,00"), "$" + "x".repeat(200), "", "$", "$*00");
        assertEquals(Map.of("NO_START", 1L, "UNKNOWN", 3L, "TOO_LONG", 1L, "NO_CHECKSUM", 1L), receiver.rejected());
        hear(RMC);
        assertTrue(place().isPresent());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "GPRMC,123519,A,9007.038,N,01131.000,E,1,1,230394,,",
                "GPRMC,123519,A,9000.001,N,01131.000,E,1,1,230394,,",
                "GPRMC,123519,A,4860.000,N,01131.000,E,1,1,230394,,",
                "GPRMC,123519,A,4807.038,N,18000.001,E,1,1,230394,,",
                "GPRMC,123519,A,4807.038,E,01131.000,N,1,1,230394,,",
                "GPRMC,123519,A,807.038,N,01131.000,E,1,1,230394,,",
                "GPRMC,123519,A,-807.038,N,01131.000,E,1,1,230394,,",
                "GPRMC,123519,A,,,,,1,1,230394,,",
                "GPRMC,123519,A,4807.038,N,01131.000,E,1,1,310294,,",
                "GPRMC,123519,A,4807.038,N,01131.000,E,1,1,001394,,",
                "GPRMC,123519,A,4807.038,N,01131.000,E,1,1,2303,,",
                "GPRMC,243519,A,4807.038,N,01131.000,E,1,1,230394,,",
                "GPRMC,123561,A,4807.038,N,01131.000,E,1,1,230394,,",
                "GPRMC,123560,A,4807.038,N,01131.000,E,1,1,230394,,",
                "GPRMC,123519,B,4807.038,N,01131.000,E,1,1,230394,,",
                "GPRMC,123519,A,4807.038,N",
                "GPGGA,123519,4807.038,N,01131.000,E,1",
                "GPGGA,123519,4807.038,N,01131.000,E,x,08,0.9",
                "GPGGA,123519,4807.038,N,01131.000,E,1,eight,0.9"
            })
    void refusesFieldsOutOfTheirRange(String between) {
        hear(right(between));
        assertNothingBut("BAD_FIELD");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "GPRMC,092752.000,V,5321.6802,N,00630.3371,W,0.06,31.66,280511,,,N",
                "GPRMC,092752.000,V,,,,,,,280511,,,N",
                "GPRMC,,V,,,,,,,,,,N",
                "GPRMC,092752.000,A,5321.6802,N,00630.3371,W,0.06,31.66,280511,,,E",
                "GPRMC,092752.000,A,5321.6802,N,00630.3371,W,0.06,31.66,280511,,,S",
                "GPGGA,092752.000,5321.6802,N,00630.3371,W,0,0,,,M,,M,,",
                "GPGGA,092752.000,,,,,0,00,99.99,,,,,,",
                "GPGGA,092752.000,5321.6802,N,00630.3371,W,6,8,1.03,61.7,M,55.3,M,,",
                "GPGGA,092752.000,5321.6802,N,00630.3371,W,8,8,1.03,61.7,M,55.3,M,,"
            })
    void takesThePlaceBackWhenTheReceiverHasNoFix(String between) {
        hear(GGA, RMC);
        assertTrue(place().isPresent());

        hear(right(between));

        assertEquals(Optional.empty(), place());
        assertEquals(Map.of(), receiver.rejected());
    }

    @Test
    void believesTheVoidOneOfTwoSentencesThatContradictEachOther() {
        hear(right("GPGGA,092751.000,5321.6802,N,00630.3371,W,0,8,1.03,61.7,M,55.3,M,,"), RMC);
        assertEquals(Optional.empty(), place());

        nanos += 10 * SECOND;
        hear(right("GPRMC,092751.000,V,5321.6802,N,00630.3371,W,0.06,31.66,280511,,"), GGA);
        assertEquals(Optional.empty(), place());
    }

    @Test
    void knowsNoPlaceTenSecondsAfterTheLastWord() {
        hear(GGA, RMC);
        nanos += 10 * SECOND;
        assertTrue(place().isPresent());
        nanos++;
        assertEquals(Optional.empty(), place());
    }

    @Test
    void carriesTheTimeOnByTheCounterForAnHour() {
        hear(RMC);
        nanos += 3_600 * SECOND;
        assertEquals(Optional.of(Instant.parse("2011-05-28T10:27:51Z")), utc());
        nanos++;
        assertEquals(Optional.empty(), utc());
    }

    @Test
    void knowsNoTimeWithoutADateNorInALeapSecond() {
        hear(right("GPRMC,092751.000,A,5321.6802,N,00630.3371,W,0.06,31.66,,,,A"));
        assertTrue(place().isPresent());
        assertEquals(Optional.empty(), utc());

        hear(right("GPRMC,235960.000,A,5321.6802,N,00630.3371,W,0.06,31.66,311216,,,A"));
        assertEquals(Optional.empty(), utc());
        hear(right("GPRMC,235959.500,A,5321.6802,N,00630.3371,W,0.06,31.66,311216,,,A"));
        assertEquals(Optional.of(Instant.parse("2016-12-31T23:59:59.5Z")), utc());
        assertEquals(Map.of(), receiver.rejected());
    }

    /** Two digits of a year: 80 to 99 are the last century's (the satellites have told time since 1980), the others this one's. */
    @ParameterizedTest
    @CsvSource({"80,1980", "99,1999", "00,2000", "79,2079"})
    void knowsTheCentury(String two, int year) {
        hear(right("GPRMC,092751,A,5321.6802,N,00630.3371,W,0.06,31.66,2805" + two + ",,"));
        assertEquals(Optional.of(Instant.parse(year + "-05-28T09:27:51Z")), utc());
    }

    @Test
    void readsTheSameHoweverTheBytesAreCut() {
        byte[] bytes = (GGA + "\r\n" + RMC + "\r\n").getBytes(StandardCharsets.US_ASCII);
        for (int cut = 1; cut < bytes.length; cut++) {
            GpsReceiver cutInTwo = new GpsReceiver();
            byte[] rest = java.util.Arrays.copyOfRange(bytes, cut, bytes.length);
            cutInTwo.feed(bytes, cut, nanos);
            cutInTwo.feed(rest, rest.length, nanos);
            assertEquals(533613367, cutInTwo.place(nanos).orElseThrow().latitudeE7());
            assertEquals(8, cutInTwo.place(nanos).orElseThrow().satellites());
            assertTrue(cutInTwo.utcMicros(nanos).isPresent());
        }
    }

    /** One wrong byte changes the exclusive or: whatever is hit, no other place and no other time come out. */
    @Property(tries = 2_000)
    void oneDamagedByteNeverMakesAnotherPlaceOrTime(@ForAll int at, @ForAll byte damage) {
        byte[] bytes = (RMC + "\r\n").getBytes(StandardCharsets.US_ASCII);
        bytes[Math.floorMod(at, bytes.length)] = damage;
        GpsReceiver damaged = new GpsReceiver();

        damaged.feed(bytes, bytes.length, nanos);

        damaged.place(nanos).ifPresent(place -> {
            assertEquals(533613367, place.latitudeE7());
            assertEquals(-65056183, place.longitudeE7());
        });
        damaged.utcMicros(nanos)
                .ifPresent(micros -> assertEquals(
                        Instant.parse("2011-05-28T09:27:51Z"), Instant.EPOCH.plus(micros, ChronoUnit.MICROS)));
    }
}
