package tautlog.desk.service;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tautlog.config.NearestKey;
import tautlog.rig.GearKind;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.InspectionFigure;
import tautlog.service.Ledger;

/** Entries about gear that no rig has, or with figures that such gear does not have: they may be meant of other gear. */
final class GearDoubts {
    private final Ledger ledger;
    private final KnownGear known;

    GearDoubts(Ledger ledger, KnownGear known) {
        this.ledger = ledger;
        this.known = known;
    }

    /** A sentence or two for each, in the order of time; one about each winch whose rig cannot be read. */
    Set<String> sentences() {
        Set<String> sentences = new LinkedHashSet<>();
        Map<Subject, Entry> last = lastAboutEach();
        noteUnread(last.keySet(), sentences);
        last.forEach((subject, entry) -> noteStranger(subject, entry, sentences));
        for (Entry entry : ledger.entries()) {
            if (entry.act() instanceof Act.Inspected inspected && known.isKnown(entry.winch())) {
                noteFigures(entry, inspected, sentences);
            }
        }
        return sentences;
    }

    private record Subject(Optional<String> winch, String gear) {}

    private Map<Subject, Entry> lastAboutEach() {
        Map<Subject, Entry> last = new LinkedHashMap<>();
        for (Entry entry : ledger.entries()) {
            entry.act().subject().ifPresent(piece -> last.put(new Subject(entry.winch(), piece.gear()), entry));
        }
        return last;
    }

    /** What the ledger says of gear of a winch whose rig cannot be read nobody can check. */
    private void noteUnread(Set<Subject> subjects, Collection<String> sentences) {
        for (String winch : known.unread()) {
            if (subjects.stream().anyMatch(one -> one.winch().map(winch::equals).orElse(true))) {
                sentences.add("Gear of the ledger could not be held against the rig of " + winch
                        + ", which cannot be read: what is said of it may be meant of other gear.");
            }
        }
    }

    /** Gear that was retired last is rightly in the rig no more. */
    private void noteStranger(Subject subject, Entry last, Collection<String> sentences) {
        Map<String, GearKind> gear = known.of(subject.winch());
        if (!known.isKnown(subject.winch()) || gear.containsKey(subject.gear()) || last.act() instanceof Act.Retired) {
            return;
        }
        String none = subject.winch().isEmpty() && !known.unread().isEmpty()
                ? "\" that no rig has which can be read (entry "
                : "\" that no rig has (entry ";
        sentences.add("The ledger speaks of gear \"" + subject.gear() + none + last.id() + ", "
                + last.act().kind() + ")."
                + NearestKey.to(subject.gear(), gear.keySet())
                        .map(near -> " Did somebody mean \"" + near + "\"? Enter it again with --replaces " + last.id()
                                + ".")
                        .orElse(" The rig has: " + String.join(", ", KnownGear.ids(gear, kind -> true))
                                + ". If it is gone, enter it as retired."));
    }

    private void noteFigures(Entry entry, Act.Inspected inspected, Collection<String> sentences) {
        Map<String, GearKind> gear = known.of(entry.winch());
        String id = inspected.gear().gear();
        if (!gear.containsKey(id)) {
            return;
        }
        GearKind kind = gear.getOrDefault(id, GearKind.OTHER);
        List<InspectionFigure> strange = inspected.figures().keySet().stream()
                .flatMap(key -> InspectionFigure.of(key).stream())
                .filter(figure -> !figure.fits(kind))
                .toList();
        for (InspectionFigure figure : strange) {
            Set<String> others = KnownGear.ids(gear, other -> other != GearKind.OTHER && figure.fits(other));
            sentences.add("Entry " + entry.id() + " tells the " + figure.words() + " of \"" + id + "\", which is "
                    + kind.word() + ": only " + figure.kindWords() + " has that. Was other gear inspected"
                    + (others.isEmpty() ? "" : " (" + String.join(", ", others) + ")")
                    + "? Enter it again with --replaces " + entry.id() + ".");
        }
    }
}
