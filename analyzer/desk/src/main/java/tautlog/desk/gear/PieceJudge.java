package tautlog.desk.gear;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.Verdict;

/**
 * Decides where one piece of gear stands. What warns counts at once; what reassures counts only when it is certain: an inspection with a
 * name under it, which surely lies behind the overload.
 */
final class PieceJudge {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private final List<GearLoad> loads;
    private final List<Entry> entries;
    private final Optional<Instant> fittedByRig;
    private final Optional<String> outByRig;
    private final ZoneId zone;

    /**
     * @param loads of this gear, whichever of its identical pieces it was
     * @param entries of the ledger about this piece, or about all of them
     * @param fittedByRig from when on it is another piece than before, as the rig says
     * @param outByRig why the rig's own figures take it out
     * @param zone of the days in sentences
     */
    PieceJudge(
            List<GearLoad> loads,
            List<Entry> entries,
            Optional<Instant> fittedByRig,
            Optional<String> outByRig,
            ZoneId zone) {
        this.loads = loads;
        this.entries = entries;
        this.fittedByRig = fittedByRig;
        this.outByRig = outByRig;
        this.zone = zone;
    }

    Piece judge(Optional<String> name, int count) {
        Optional<Entry> answer =
                latest(entries.stream().filter(Entry::putsIntoService).toList());
        Optional<Instant> inServiceSince = latestOf(answer.map(Entry::at), fittedByRig);
        List<GearLoad> open = loads.stream()
                .filter(load ->
                        inServiceSince.map(since -> !load.wasBefore(since)).orElse(true))
                .toList();
        List<Entry> since = entries.stream()
                .filter(entry ->
                        inServiceSince.map(start -> !entry.at().isBefore(start)).orElse(true))
                .toList();
        List<String> reasons = new ArrayList<>(outByRig.stream().toList());
        since.forEach(entry -> reason(entry).ifPresent(reasons::add));
        return new Piece(name, count, standing(open, since, reasons, name.isPresent()), open, reasons, answer);
    }

    /** @param isToldApart overloads after it was taken away were those of another of the identical pieces */
    private Standing standing(List<GearLoad> open, List<Entry> since, List<String> reasons, boolean isToldApart) {
        Optional<Entry> retired = retired();
        if (retired.isPresent()) {
            boolean wasUsedAfter = !isToldApart
                    && open.stream()
                            .anyMatch(load -> !load.wasBefore(retired.get().at()));
            return wasUsedAfter ? Standing.OUT_OF_SERVICE : Standing.RETIRED;
        }
        if (since.stream().anyMatch(PieceJudge::scraps)) {
            return Standing.SCRAP;
        }
        if (!reasons.isEmpty() || open.stream().anyMatch(load -> !load.event().onlyMayBe())) {
            return Standing.OUT_OF_SERVICE;
        }
        return open.isEmpty() ? Standing.NOTHING_KNOWN_AGAINST_IT : Standing.INSPECT;
    }

    /** The entry that took it away for good; only one that says it was fitted ends that. */
    private Optional<Entry> retired() {
        Optional<Instant> fitted = latestOf(
                latest(entries.stream()
                                .filter(entry -> entry.act() instanceof Act.Fitted)
                                .toList())
                        .map(Entry::at),
                fittedByRig);
        return latest(entries.stream()
                .filter(entry -> entry.act() instanceof Act.Retired)
                .filter(entry ->
                        fitted.map(since -> !entry.at().isBefore(since)).orElse(true))
                .toList());
    }

    private static boolean scraps(Entry entry) {
        return entry.act() instanceof Act.Inspected inspected && inspected.verdict() == Verdict.SCRAP;
    }

    private Optional<String> reason(Entry entry) {
        String day = DAY.format(entry.at().atZone(zone));
        String note = entry.note().map(text -> ": " + text).orElse("");
        String by = entry.by().map(name -> " by " + name).orElse("");
        if (entry.act() instanceof Act.OutOfService) {
            return Optional.of("Taken out of service" + by + " on " + day + note + ".");
        }
        if (entry.act() instanceof Act.Inspected inspected) {
            return switch (inspected.verdict()) {
                case STAYS_OUT -> Optional.of("Inspected" + by + " on " + day + ", stays out" + note + ".");
                case SCRAP -> Optional.of("Inspected" + by + " on " + day + ": scrap it" + note + ".");
                case BACK_IN_SERVICE -> Optional.empty();
            };
        }
        return Optional.empty();
    }

    private static Optional<Entry> latest(List<Entry> entries) {
        return entries.stream().max(Comparator.comparing(Entry::at).thenComparing(Entry::id));
    }

    private static Optional<Instant> latestOf(Optional<Instant> one, Optional<Instant> other) {
        return one.isPresent() && other.isPresent()
                ? Optional.of(one.get().isAfter(other.get()) ? one.get() : other.get())
                : one.or(() -> other);
    }
}
