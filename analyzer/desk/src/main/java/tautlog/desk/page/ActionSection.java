package tautlog.desk.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tautlog.desk.report.Entry;
import tautlog.desk.report.ItemLoad;
import tautlog.desk.report.Report;
import tautlog.detect.Finding.TroubleKind;
import tautlog.rig.Band;

/** What somebody must do: one inspection for each piece of gear, however many pulls overloaded it; then the sensor. */
public final class ActionSection {
    private static final String UNSURE =
            " How far the readings may be off is not known (see \"How far to trust this\"), so a worse band is not ruled out: tell"
                    + " that to who inspects it.";

    private final Report report;
    private final Screen screen;

    public ActionSection(Report report, Screen screen) {
        this.report = report;
        this.screen = screen;
    }

    /** An item's load beyond what it may carry, and the overload that it comes from. */
    private record Hit(Entry.Overload overload, ItemLoad item) {}

    public Document.Section section() {
        List<Block> blocks = new ArrayList<>();
        if (!report.whatIf().isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.CAUTION,
                    "What if",
                    "these are loads as they would have been. What was in force on the day is in the report without"
                            + " --rig and --hookup."));
        }
        report.leftOut().sentences().forEach(text -> blocks.add(new Block.Notice(Block.Tone.ACTION, "Left out", text)));
        report.leftOut().damage().forEach(text -> blocks.add(new Block.Notice(Block.Tone.ACTION, "Damaged", text)));
        if (report.overloads().isEmpty()) {
            blocks.add(new Block.Paragraph(nothingAbove()));
        }
        gear().values().stream()
                .sorted(Comparator.comparing((List<Hit> hits) -> worstBand(hits))
                        .reversed())
                .forEach(hits -> blocks.add(gear(hits)));
        mayBe(blocks);
        notKnown(blocks);
        assumed(blocks);
        atMost(blocks);
        sensor(blocks);
        return new Document.Section("What needs action", blocks);
    }

    private String nothingAbove() {
        String found = report.pulls().isEmpty()
                ? "No pull was found, and no reading above a limit."
                : "No reading was above the limit of the hookup taken to be on.";
        return found + " That says nothing of the gear's state, nor of pulls that were not recorded"
                + (report.leftOut().isNothing() ? "." : " or could not be read.");
    }

    private Map<String, List<Hit>> gear() {
        Map<String, List<Hit>> byGear = new LinkedHashMap<>();
        for (Entry.Overload overload : report.overloads()) {
            hits(overload)
                    .forEach((gear, hit) -> byGear.computeIfAbsent(gear, of -> new ArrayList<>())
                            .add(hit));
        }
        return byGear;
    }

    /** Gear that stands twice in a hookup is hit once, at the place where it carried most of what it may. */
    private static Map<String, Hit> hits(Entry.Overload overload) {
        Map<String, Hit> hits = new LinkedHashMap<>();
        overload.items().stream()
                .filter(item -> item.band().isPresent())
                .forEach(item -> hits.merge(
                        item.gear(),
                        new Hit(overload, item),
                        (one, other) -> one.item().share() >= other.item().share() ? one : other));
        return hits;
    }

    private static Band worstBand(List<Hit> hits) {
        return hits.stream()
                .flatMap(hit -> hit.item().band().stream())
                .max(Comparator.naturalOrder())
                .orElse(Band.PAST_WLL);
    }

    /** Of all hits, where it is worse than the worst that was seen. */
    private static Optional<Band> worseMayBe(List<Hit> hits) {
        return hits.stream()
                .flatMap(hit -> hit.item().bandMayBe().stream())
                .max(Comparator.naturalOrder())
                .filter(band -> band.compareTo(worstBand(hits)) > 0);
    }

    /** What no reading shows, but is not ruled out by what is known of the readings' errors. */
    private void mayBe(List<Block> blocks) {
        List<Entry.Pull> pulls =
                report.pulls().stream().filter(Entry.Pull::mayBeOver).toList();
        if (!pulls.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.CAUTION,
                    "May be over",
                    "in " + Screen.counted(pulls.size(), "pull") + ", first at "
                            + screen.time(pulls.get(0).start())
                            + ", no reading was above the limit, but with what is known of the readings' errors the true"
                            + " peak may have been. They are marked MAY BE OVER under \"Pulls\"."));
        }
        List<String> gear = mayBeOverloaded();
        if (!gear.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.CAUTION,
                    "May be overloaded",
                    Screen.listed(gear) + ": in an overload of other gear, by no reading itself past what it may carry."
                            + " Inspect it together with that gear."));
        }
    }

    private List<String> mayBeOverloaded() {
        Map<String, Band> worst = new LinkedHashMap<>();
        Set<String> atMost = new HashSet<>();
        report.overloads().stream()
                .flatMap(overload -> overload.items().stream())
                .forEach(item -> item.worseMayBe().ifPresent(band -> {
                    worst.merge(item.gear(), band, (one, other) -> one.compareTo(other) >= 0 ? one : other);
                    if (item.allowedIsAtMost()) {
                        atMost.add(item.gear());
                    }
                }));
        worst.keySet().removeAll(gear().keySet());
        return worst.entrySet().stream()
                .map(gear -> gear.getKey() + " (" + EventSentences.mayBe(gear.getValue())
                        + (atMost.contains(gear.getKey()) ? "; its limit is only known as at most" : "") + ")")
                .toList();
    }

    private Block gear(List<Hit> hits) {
        Hit worst = hits.stream()
                .max(Comparator.comparingDouble(hit -> hit.item().share()))
                .orElseThrow();
        ItemLoad item = worst.item();
        Entry.Overload overload = worst.overload();
        Optional<Band> worse = worseMayBe(hits);
        boolean unsure = worstBand(hits) != Band.PAST_BREAKING
                && hits.stream().anyMatch(hit -> hit.item().isBandUnsure());
        boolean bound = overload.atLeast() || item.allowedIsAtMost();
        String text = OverloadedGear.todo(item.gear(), worstBand(hits)) + OverloadedGear.alike(item.alike())
                + " Overloaded "
                + EventSentences.times(hits.size())
                + "; the greatest load was "
                + screen.force(item.loadNewtons(), overload.atLeast()) + screen.intervalWithCoverage(item.load()) + ", "
                + Screen.atLeast(bound) + Screen.percent(item.share(), item.shareBounds()) + " of the "
                + screen.force(item.allowedNewtons()) + (item.allowedIsAtMost() ? " at most" : "")
                + " allowed, in the overload that began at " + screen.preciseTime(overload.start()) + "."
                + figures(item) + EventSentences.more(overload.atLeast())
                + worse.map(band -> " With what is known of the readings' errors the load may have been " + band.word()
                                + ": tell that to who inspects it.")
                        .orElse("")
                + (unsure ? UNSURE : "");
        return new Block.Notice(
                Block.Tone.ACTION,
                item.gear() + " (" + worstBand(hits).word()
                        + worse.map(band -> ", " + EventSentences.mayBe(band)).orElse("")
                        + (unsure ? ", how sure is not known" : "") + ")",
                text);
    }

    private String figures(ItemLoad item) {
        List<String> known = new ArrayList<>();
        item.proofNewtons().ifPresent(proof -> known.add("proof load is " + screen.force(proof)));
        item.breakingNewtons().ifPresent(breaking -> known.add("breaking load is " + screen.force(breaking)));
        return known.isEmpty()
                ? " No proof or breaking load is published for it."
                : " Its " + String.join(" and its ", known) + ".";
    }

    private void notKnown(List<Block> blocks) {
        for (Report.HookupNotKnown stretch : report.hookupsNotKnown()) {
            blocks.add(new Block.Notice(
                    Block.Tone.CAUTION,
                    "Hookup not known",
                    "which hookup was on from " + screen.preciseTime(stretch.start()) + " to "
                            + screen.preciseTime(stretch.end())
                            + " is not known: what may have named it is damaged or missing."
                            + " Hookup " + stretch.taken() + ", which has the lowest limit, is assumed."));
        }
    }

    private void assumed(List<Block> blocks) {
        List<String> wholly = new ArrayList<>();
        List<String> sentences = new ArrayList<>();
        for (String id : assumedIds()) {
            Assumed assumed = Assumed.of(report, id);
            if (assumed.isPartly()) {
                sentences.add(assumed.sentence(screen));
            } else {
                wholly.add(id);
            }
        }
        if (!wholly.isEmpty()) {
            sentences.add(0, Assumed.nobodySaid(report) + " that hookup " + Screen.listed(wholly) + " was on.");
        }
        if (!sentences.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.CAUTION,
                    "Assumed",
                    String.join(" ", sentences)
                            + " Limits and shares hold only if it was. With another rigging read again"
                            + " with --hookup ID."));
        }
    }

    private List<String> assumedIds() {
        return report.hookups().stream()
                .filter(Report.HookupInForce::assumed)
                .map(Report.HookupInForce::id)
                .distinct()
                .toList();
    }

    private void atMost(List<Block> blocks) {
        List<String> ids = report.hookups().stream()
                .filter(Report.HookupInForce::limitIsAtMost)
                .map(Report.HookupInForce::id)
                .distinct()
                .toList();
        if (!ids.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Tone.CAUTION,
                    "At most",
                    "the limit of hookup " + Screen.listed(ids)
                            + " is only an upper bound, because an item has no published rating for the way it is rigged."
                            + " The true limit is lower and every share is \"at least\". Write the maker's factor into"
                            + " the rig to settle it."));
        }
    }

    private void sensor(List<Block> blocks) {
        for (TroubleKind kind : TroubleKind.values()) {
            List<Entry.Trouble> found = report.trouble().stream()
                    .filter(trouble -> trouble.trouble() == kind)
                    .toList();
            String todo = todo(kind);
            if (!found.isEmpty() && !todo.isEmpty()) {
                blocks.add(new Block.Notice(
                        Block.Tone.CAUTION,
                        "Sensor",
                        TroubleWords.of(kind) + ", " + EventSentences.times(found.size()) + ", first at "
                                + screen.preciseTime(found.get(0).start()) + ". " + todo));
            }
        }
    }

    private static String todo(TroubleKind kind) {
        return switch (kind) {
            case OPEN_BRIDGE -> "Look at plug, cable and cell before the next pull; what happened then is not known.";
            case END_STOP ->
                "The true tension may have been greater. Look at cell and cable; use a cell of greater"
                        + " capacity if it was the pull.";
            case ZERO_DRIFT -> "Unload the line, take the zero again and find out why it moved.";
            case GAP, ZERO_UNPROVEN, ONE_SAMPLE_PEAK -> "";
        };
    }
}
