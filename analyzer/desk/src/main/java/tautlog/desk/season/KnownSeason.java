package tautlog.desk.season;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tautlog.desk.report.LeftOut;

/**
 * What is known of the folder.
 *
 * @param outings each once, in the order of time
 * @param stamps of each recording by its file: changes with its rows
 * @param leftOut what could not be read
 * @param notes of how outings were put together, one sentence each
 */
public record KnownSeason(
        ZoneId zone, List<KnownOuting> outings, Map<Path, String> stamps, LeftOut leftOut, List<String> notes) {
    public KnownSeason {
        outings = List.copyOf(outings);
        stamps = Map.copyOf(stamps);
        notes = List.copyOf(notes);
    }

    static KnownSeason nothing(ZoneId zone) {
        return new KnownSeason(zone, List.of(), Map.of(), new LeftOut(List.of(), List.of()), List.of());
    }

    /** Each day's outings, in the order of time, undated ones last. */
    public Map<DayKey, List<KnownOuting>> days() {
        return outings.stream()
                .collect(Collectors.groupingBy(outing -> outing.day(zone), TreeMap::new, Collectors.toList()));
    }

    /** Another one when a recording changed or an outing grew. */
    public String stamp() {
        return Fingerprint.of(
                new TreeMap<>(stamps).toString(),
                outings.stream().map(this::stamp).collect(Collectors.joining("\n")));
    }

    /** Another one when its recording changed or it grew: samples that are not sealed yet change no row that the recording's stamp counts. */
    String stamp(KnownOuting known) {
        return known.id() + " " + stamps.getOrDefault(known.file(), "") + " "
                + known.outing().samples() + " " + known.outing().lastTick() + " "
                + known.outing().closed();
    }

    /** The winches, sorted by name. */
    public List<String> winches() {
        return outings.stream().map(KnownOuting::winch).distinct().sorted().toList();
    }

    /** A winch's name for addresses. */
    public static String winchId(String winch) {
        return Fingerprint.of(winch).substring(0, 8);
    }

    /** The winch that is called so in addresses. */
    public Optional<String> winch(String id) {
        return winches().stream().filter(one -> winchId(one).equals(id)).findFirst();
    }

    public Optional<KnownOuting> outing(String id) {
        return outings.stream().filter(one -> one.id().equals(id)).findFirst();
    }

    public Optional<DayKey> day(String id) {
        return days().keySet().stream().filter(day -> day.id().equals(id)).findFirst();
    }
}
