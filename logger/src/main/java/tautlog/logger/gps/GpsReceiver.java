package tautlog.logger.gps;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import tautlog.logger.gps.GpsFix.Place;
import tautlog.logger.gps.GpsFix.Time;
import tautlog.logger.gps.NmeaFields.BadField;

/**
 * Turns a receiver's bytes into its latest fix. {@link #feed} belongs to one thread; {@link #place}, {@link #utcMicros} and {@link
 * #rejected} are for any.
 *
 * <p>A sentence that says that there is no fix (RMC status V, GGA quality 0, positions only estimated, entered or simulated)
 * takes the place back at once. The time is that of RMC alone: only it has the date. Of a time the age does not matter: the
 * computer's counter carries it on, for an hour at most.
 */
public final class GpsReceiver {
    private static final long PLACE_NANOS = TimeUnit.SECONDS.toNanos(10);
    /** Chosen: a counter that is off by 100 millionths then stands 0.36 s wrong. */
    private static final long TIME_NANOS = TimeUnit.HOURS.toNanos(1);
    /** RMC and GGA tell of the same fix: so long the word of the one binds the other. */
    private static final long TOGETHER_NANOS = TimeUnit.SECONDS.toNanos(3);

    private static final int RMC_FIELDS = 10;
    private static final int GGA_FIELDS = 9;

    private final StringBuilder line = new StringBuilder();
    private final EnumMap<NmeaFault, Long> counts = new EnumMap<>(NmeaFault.class);
    private boolean tooLong;
    private long nowNanos;
    private Optional<Long> ggaNanos = Optional.empty();
    private Optional<Long> voidNanos = Optional.empty();
    private volatile GpsFix latest = GpsFix.NONE;
    private volatile Map<String, Long> rejected = Map.of();

    /** @param nanos when they came, by a clock that never goes back */
    public void feed(byte[] bytes, int n, long nanos) {
        nowNanos = nanos;
        for (int i = 0; i < n; i++) {
            char next = (char) (bytes[i] & 0xff);
            if (next == '\n' || next == '\r') {
                endLine();
            } else if (line.length() < NmeaSentence.LONGEST) {
                line.append(next);
            } else {
                tooLong = true;
            }
        }
    }

    /** Another line was opened, or the last one is gone: half a sentence is none. */
    public void reset() {
        line.setLength(0);
        tooLong = false;
    }

    private void endLine() {
        if (tooLong) {
            reject(NmeaFault.TOO_LONG);
        } else if (line.length() > 0) {
            NmeaSentence.read(line.toString(), new NmeaSentence.Taker() {
                @Override
                public void sentence(NmeaSentence sentence) {
                    take(sentence);
                }

                @Override
                public void rejected(NmeaFault fault) {
                    reject(fault);
                }
            });
        }
        reset();
    }

    private void reject(NmeaFault fault) {
        counts.merge(fault, 1L, Long::sum);
        Map<String, Long> told = new TreeMap<>();
        counts.forEach((kind, n) -> told.put(kind.name(), n));
        rejected = Map.copyOf(told);
    }

    private void take(NmeaSentence sentence) {
        try {
            switch (sentence.kind()) {
                case "RMC" -> recommended(sentence);
                case "GGA" -> fixData(sentence);
                default -> reject(NmeaFault.UNKNOWN);
            }
        } catch (BadField bad) {
            reject(NmeaFault.BAD_FIELD);
        }
    }

    /** RMC: 1 time, 2 status, 3 to 6 place, 7 speed, 8 course, 9 date, 10 and 11 variation, 12 mode. */
    private void recommended(NmeaSentence rmc) throws BadField {
        require(rmc, RMC_FIELDS);
        String status = rmc.field(2);
        Optional<Long> utc = NmeaFields.utcMicros(rmc.field(1), rmc.field(9));
        String mode = rmc.field(12);
        if (!status.equals("A") && !status.equals("V")) {
            throw new BadField(status);
        }
        if (status.equals("V") || !mode.matches("[ADFPR]?")) { // E estimated, M entered, N none, S simulated
            voidNanos = Optional.of(nowNanos);
            latest = new GpsFix(Optional.empty(), latest.utc());
            return;
        }
        Place place = new Place(
                nowNanos,
                NmeaFields.latitudeE7(rmc.field(3), rmc.field(4)),
                NmeaFields.longitudeE7(rmc.field(5), rmc.field(6)),
                0,
                0);
        voidNanos = Optional.empty();
        latest = new GpsFix(
                isRecent(ggaNanos)
                        ? latest.place()
                        : Optional.of(place), // GGA's says how good it is, or that there is none
                utc.map(micros -> new Time(nowNanos, micros)).or(() -> latest.utc()));
    }

    /** GGA: 1 time, 2 to 5 place, 6 quality, 7 satellites, 8 dilution. */
    private void fixData(NmeaSentence gga) throws BadField {
        require(gga, GGA_FIELDS);
        NmeaFields.utcMicros(gga.field(1), ""); // looked at for its range only
        String quality = gga.field(6);
        if (!quality.matches("[0-9]")) {
            throw new BadField(quality);
        }
        ggaNanos = Optional.of(nowNanos);
        if (!quality.matches("[1-5]")) { // 0 none, 6 estimated, 7 entered, 8 simulated
            latest = new GpsFix(Optional.empty(), latest.utc());
            return;
        }
        Place place = new Place(
                nowNanos,
                NmeaFields.latitudeE7(gga.field(2), gga.field(3)),
                NmeaFields.longitudeE7(gga.field(4), gga.field(5)),
                NmeaFields.whole(gga.field(7)),
                NmeaFields.tenths(gga.field(8)));
        latest = new GpsFix(isRecent(voidNanos) ? Optional.empty() : Optional.of(place), latest.utc());
    }

    private boolean isRecent(Optional<Long> nanos) {
        return nanos.isPresent() && nowNanos - nanos.get() < TOGETHER_NANOS;
    }

    private static void require(NmeaSentence sentence, int fields) throws BadField {
        if (sentence.size() < fields) {
            throw new BadField("");
        }
    }

    /** Where the receiver is, told in the last 10 s; else nothing is known. */
    public Optional<Place> place(long atNanos) {
        return latest.place().filter(place -> atNanos - place.nanos() <= PLACE_NANOS);
    }

    /** UTC in microseconds since 1970, always late by what the receiver took to tell it; empty when it has not for an hour. */
    public Optional<Long> utcMicros(long atNanos) {
        return latest.utc().filter(time -> atNanos - time.nanos() <= TIME_NANOS).map(time -> time.at(atNanos));
    }

    /** Lines that were not taken, by the name of their {@link NmeaFault}. */
    public Map<String, Long> rejected() {
        return rejected;
    }
}
