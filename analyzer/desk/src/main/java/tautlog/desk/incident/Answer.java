package tautlog.desk.incident;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tautlog.desk.page.EventSentences;
import tautlog.desk.page.OverloadedGear;
import tautlog.desk.page.Screen;
import tautlog.desk.report.Entry;
import tautlog.desk.report.ItemLoad;
import tautlog.desk.uncertainty.Cause;
import tautlog.desk.uncertainty.Interval;
import tautlog.detect.Known;
import tautlog.rig.Band;

/**
 * What a reader asks first, answered in sentences.
 *
 * @param whatBroke what broke the limit
 * @param byHowMuch by how much
 * @param howSure how far that can be trusted
 * @param whatNow what to do
 */
public record Answer(String whatBroke, String byHowMuch, String howSure, String whatNow) {
    static Answer of(Incident incident, Screen screen) {
        Words words = new Words(incident, screen);
        Optional<Subject> subject = incident.outing().flatMap(OutingFacts::subject);
        return subject.map(of -> new Answer(
                        words.whatBroke(of), words.byHowMuch(of), words.howSure(of), words.whatNow(incident)))
                .orElseGet(() -> new Answer(
                        words.nothingPulled(),
                        words.greatestReading(),
                        "What was not recorded is not known, and a line without a pull may still have been under load.",
                        words.whatNow(incident)));
    }

    /** The worst band of each piece of gear over all overloads of the window, the worst gear first. */
    static Map<String, Band> gear(Incident incident) {
        Map<String, Band> worst = new LinkedHashMap<>();
        incident.report().overloads().stream()
                .flatMap(overload -> overload.items().stream())
                .forEach(item -> item.band()
                        .ifPresent(band -> worst.merge(
                                item.gear(), band, (one, other) -> one.compareTo(other) >= 0 ? one : other)));
        return worst.entrySet().stream()
                .sorted(Map.Entry.<String, Band>comparingByValue().reversed())
                .collect(Collectors.toMap(
                        Map.Entry::getKey, Map.Entry::getValue, (one, other) -> one, LinkedHashMap::new));
    }

    /** How many pieces of {@code gear} there are. */
    static int alike(Incident incident, String gear) {
        return incident.report().overloads().stream()
                .flatMap(overload -> overload.items().stream())
                .filter(item -> item.gear().equals(gear))
                .mapToInt(ItemLoad::alike)
                .max()
                .orElse(1);
    }

    private record Words(Incident incident, Screen screen) {
        String whatBroke(Subject subject) {
            String limit = "the limit of hookup " + subject.against().hookup() + ", "
                    + (subject.against().isAtMost() ? "at most " : "")
                    + screen.force(subject.against().newtons()) + ", set by "
                    + subject.against().governing();
            if (!incident.report().overloads().isEmpty()) {
                return "The pull in the line went over " + limit + overloads() + "; the greatest began at "
                        + screen.preciseTime(subject.start()) + ". Loaded past what it may carry: "
                        + Screen.listed(gear(incident).entrySet().stream()
                                .map(gear ->
                                        gear.getKey() + " (" + gear.getValue().word() + ")")
                                .toList())
                        + ".";
            }
            return switch (subject.overLimit()) {
                case YES ->
                    "No reading was over " + limit + ", but with what is known of the readings' errors the true pull"
                            + " may have been.";
                case UNKNOWN -> "No reading was over " + limit + ". Whether the true pull was is not known.";
                case NO ->
                    "Nothing that was measured broke a limit: no reading was over " + limit
                            + ", nor does the interval of the greatest reach it.";
            };
        }

        private String overloads() {
            List<Entry.Overload> all = incident.report().overloads();
            double above =
                    all.stream().mapToDouble(Entry.Overload::aboveSeconds).sum();
            return (all.size() == 1 ? "" : ", " + EventSentences.times(all.size())) + ", for " + Screen.length(above)
                    + (all.size() == 1 ? "" : " in all");
        }

        String byHowMuch(Subject subject) {
            String pull = "The greatest pull" + elsewhere() + " was "
                    + screen.force(subject.peakNewtons(), subject.atLeast())
                    + screen.intervalWithCoverage(subject.peakInterval()) + ", "
                    + Screen.share(subject.share(), subject.shareBounds(), subject.against(), subject.atLeast()) + ".";
            List<ItemLoad> past = subject.items().stream()
                    .filter(item -> item.band().isPresent())
                    .toList();
            return pull + past.stream().map(item -> " " + load(item, subject)).collect(Collectors.joining());
        }

        /** A pull may reach far out of the window, and its greatest tension with it. */
        private String elsewhere() {
            OptionalDouble seconds =
                    incident.outing().map(o -> o.readings().subject().seconds()).orElse(OptionalDouble.empty());
            double at = incident.outing().map(o -> o.at().seconds()).orElse(0.0);
            return seconds.isPresent()
                            && Math.abs(seconds.getAsDouble() - at)
                                    > incident.window().aroundSeconds()
                    ? " (of the pull then under way, " + Screen.length(Math.abs(seconds.getAsDouble() - at))
                            + (seconds.getAsDouble() < at ? " before" : " after") + " the moment asked for)"
                    : "";
        }

        private String load(ItemLoad item, Subject subject) {
            return item.gear() + " carried " + screen.force(item.loadNewtons(), subject.atLeast())
                    + screen.interval(item.load()) + " of the "
                    + screen.force(item.allowedNewtons()) + (item.allowedIsAtMost() ? " at most" : "")
                    + " it may carry (proof load " + known(item.proofNewtons()) + ", breaking load "
                    + known(item.breakingNewtons()) + ").";
        }

        private String known(OptionalDouble newtons) {
            return newtons.isPresent() ? screen.force(newtons.getAsDouble()) : "not published";
        }

        String howSure(Subject subject) {
            List<String> sentences = new ArrayList<>();
            sentences.add(interval(subject));
            if (subject.atLeast()) {
                sentences.add("The reading stood at its own end or past the cell's capacity: it was at least this.");
            }
            if (!subject.isComplete()) {
                sentences.add("Readings are missing in it or after it: it may have been more.");
            }
            if (subject.against().isAtMost()) {
                sentences.add("The limit is only known as at most: the true share is greater.");
            }
            if (subject.against().assumed()) {
                sentences.add("Nobody had said that hookup " + subject.against().hookup()
                        + " was on: limit and loads hold only if it was.");
            }
            if (!incident.report().trust().zero().proven()) {
                sentences.add("The zero was not proven in every outing.");
            }
            if (!incident.report().whatIf().isEmpty()) {
                sentences.add("This is a WHAT IF, not what was in force on the day.");
            }
            return String.join(" ", sentences);
        }

        private String interval(Subject subject) {
            Interval peak = subject.peakInterval();
            if (peak.lowNewtons().isEmpty()) {
                return "How far the readings may be off is not known: " + String.join("; ", peak.leavesOut()) + ".";
            }
            String mostly = peak.largest()
                    .map(Cause::word)
                    .map(word -> "; most of the doubt is: " + word)
                    .orElse("");
            String from = "With 95 % the true greatest pull was " + ends(peak) + mostly + ".";
            return from
                    + (subject.overLimit() == Known.YES
                            ? side(subject, peak.lowNewtons().getAsDouble())
                            : "");
        }

        /** Rounded outwards, as everywhere. */
        private String ends(Interval peak) {
            String[] both = screen.bareInterval(peak).split("–", -1);
            String unit = " " + screen.unit().symbol();
            return peak.highNewtons().isPresent()
                    ? "between " + both[0] + " and " + both[1] + unit
                    : both[0] + unit + " or more (no upper end is known)";
        }

        private static String side(Subject subject, double low) {
            return low > subject.against().newtons()
                    ? " Even its lower end is over the limit."
                    : " Its lower end is not over the limit: that it was over is likely, not certain.";
        }

        String whatNow(Incident incident) {
            Map<String, Band> gear = gear(incident);
            String rest = incident.outing().isPresent()
                    ? " Keep the recording as it is, and the link that this report prints."
                    : " Keep the recordings as they are.";
            if (gear.isEmpty() && !wasMeasured()) {
                return "Inspect the gear that was in the line before the next pull: what it bore then was not measured."
                        + rest;
            }
            if (gear.isEmpty()) {
                return "Inspect the gear that was in the line before the next pull: a reading within a limit does not prove gear"
                        + " sound, and a cause that was no overload is not seen here." + rest;
            }
            return gear.entrySet().stream()
                            .map(one -> one.getKey() + ": " + OverloadedGear.todo(one.getKey(), one.getValue())
                                    + OverloadedGear.alike(alike(incident, one.getKey())))
                            .collect(Collectors.joining(" "))
                    + rest;
        }

        private boolean wasMeasured() {
            return incident.outing()
                    .filter(of -> of.subject().isPresent() || of.readings().samples() > 0)
                    .isPresent();
        }

        String nothingPulled() {
            return switch (incident.found().state()) {
                case NO_OUTING -> "Nobody knows: no outing was being recorded at that moment.";
                case GAP ->
                    "Nobody knows: the readings of that moment are missing, and no pull lies in the time looked at.";
                case READINGS ->
                    "Nothing that was measured: no pull and no reading over a limit lies in the time looked at.";
            };
        }

        String greatestReading() {
            OptionalDouble greatest =
                    incident.outing().map(o -> o.readings().greatestNewtons()).orElse(OptionalDouble.empty());
            return greatest.isPresent()
                    ? "The greatest reading was " + screen.force(greatest.getAsDouble()) + "."
                    : "No reading lies in the time looked at.";
        }
    }
}
