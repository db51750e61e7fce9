package tautlog.desk.gear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.OverloadedGear;
import tautlog.desk.page.Screen;
import tautlog.desk.page.StandingText;
import tautlog.rig.Band;
import tautlog.rig.LoadedItem;
import tautlog.usage.GearUse;
import tautlog.usage.TimeSum;

/** Puts the lives of gear into words, what is out of service first. */
public final class GearPage {
    private static final int MOST_LOADS = 40;

    private final List<GearLives.OfWinch> winches;
    private final Screen screen;

    private GearPage(List<GearLives.OfWinch> winches, Screen screen) {
        this.winches = winches;
        this.screen = screen;
    }

    /**
     * The page.
     *
     * @param ledger the name of the ledger that was read; empty when none was
     * @param notes what a reader must know of how recordings and ledger were put together
     */
    public static Document of(
            List<GearLives.OfWinch> winches, Screen screen, Optional<String> ledger, List<String> notes) {
        return new GearPage(List.copyOf(winches), screen).document(ledger, notes);
    }

    private Document document(Optional<String> ledger, List<String> notes) {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(new OutOfService(lives(), screen, winches.size() > 1).section());
        for (GearLives.OfWinch winch : winches) {
            sections.add(table(winch));
        }
        sections.add(loads());
        for (GearLives.OfWinch winch : winches) {
            new RopeSection(winch, screen).section().ifPresent(sections::add);
            sections.add(new DrivelineSection(winch, "torque" + winches.indexOf(winch), winches.size() > 1).section());
        }
        sections.add(new Document.Section("Read this with the figures", List.of(new Block.Bullets(know(notes)))));
        sections.add(new Document.Section(StandingText.HEADING, List.of(new Block.Bullets(StandingText.sentences()))));
        return new Document(
                "Life of the gear",
                List.of(ledger.map(name -> "Ledger: " + name).orElse(OverloadedGear.NO_LEDGER)),
                "",
                sections);
    }

    private List<GearLife> lives() {
        return winches.stream().flatMap(winch -> winch.lives().stream()).toList();
    }

    private Document.Section table(GearLives.OfWinch winch) {
        String unit = screen.unit().symbol();
        List<Block.Column> columns = List.of(
                Block.Column.left("Gear"),
                Block.Column.right("Pieces"),
                Block.Column.left("Since"),
                Block.Column.right("Pulls"),
                Block.Column.right("Shocks"),
                Block.Column.right("Over"),
                Block.Column.right("Proof"),
                Block.Column.right("Break"),
                Block.Column.right("Most, " + unit),
                Block.Column.right("Share"));
        List<Block.Column> times = new ArrayList<>(List.of(Block.Column.left("Gear"), Block.Column.right("Seen")));
        GearUse.SHARES.forEach(share -> times.add(Block.Column.right("> " + percent(share))));
        String heading = "Gear" + (winches.size() > 1 ? " of " + winch.rig().winch() : "");
        return new Document.Section(
                heading,
                List.of(
                        new Block.Table(
                                heading + ": what it carried",
                                columns,
                                winch.lives().stream().map(this::carried).toList()),
                        new Block.Table(
                                heading + ": time above a share of what it may carry",
                                times,
                                winch.lives().stream().map(GearPage::times).toList()),
                        new Block.Bullets(sentences(winch))));
    }

    private static String percent(String share) {
        return Math.round(Double.parseDouble(share) * 100) + " %";
    }

    private List<String> carried(GearLife life) {
        GearUse use = life.since();
        return List.of(
                life.id() + retired(life),
                life.gear()
                        .map(gear -> String.valueOf(gear.count()))
                        .orElse(life.id().equals(LoadedItem.CELL) ? "1" : "?"),
                life.fitted().map(screen::date).orElse("not known"),
                String.valueOf(use.pulls()),
                String.valueOf(use.shocks()),
                String.valueOf(use.overloads(Band.PAST_WLL)),
                String.valueOf(use.overloads(Band.PAST_PROOF)),
                String.valueOf(use.overloads(Band.PAST_BREAKING)),
                use.loadNewtons().seen()
                        ? (use.loadNewtons().atLeast() ? "≥ " : "")
                                + screen.bareForce(use.loadNewtons().value())
                        : "not known",
                use.share().seen()
                        ? (use.share().atLeast() || use.shareIsAtLeast() ? "≥ " : "")
                                + (use.share().atLeast() || use.shareIsAtLeast()
                                        ? Screen.percent(use.share().value())
                                        : Screen.percentAtMost(use.share().value()))
                        : "not known");
    }

    /** A sign behind the id; empty when none of its pieces is retired. */
    private static String retired(GearLife life) {
        int retired = life.pieces().stream()
                .filter(piece -> piece.standing() == Standing.RETIRED)
                .mapToInt(Piece::count)
                .sum();
        boolean isAll = life.pieces().stream().allMatch(piece -> piece.standing() == Standing.RETIRED);
        return retired == 0 ? "" : isAll ? " (retired)" : " (" + retired + " retired)";
    }

    private static List<String> times(GearLife life) {
        GearUse use = life.since();
        List<String> cells =
                new ArrayList<>(List.of(life.id() + retired(life), time(use.seen(), use.timesAreAtLeast())));
        use.above().forEach(time -> cells.add(time(time, use.timesAreAtLeast() || use.shareIsAtLeast())));
        return cells;
    }

    private static String time(TimeSum time, boolean isAtLeast) {
        return (isAtLeast ? "≥ " : "") + Screen.length(time.hours() * 3_600);
    }

    private static List<String> sentences(GearLives.OfWinch winch) {
        List<String> sentences = new ArrayList<>();
        for (GearLife life : winch.lives()) {
            life.notes().forEach(note -> sentences.add(life.id() + ": " + note));
            if (life.since().assumedPulls() > 0) {
                sentences.add(life.id() + ": in " + life.since().assumedPulls() + " of its "
                        + Screen.counted(life.since().pulls(), "pull")
                        + " nobody had said that its hookup was on; it is assumed.");
            }
        }
        return sentences;
    }

    private Document.Section loads() {
        List<List<String>> rows = new ArrayList<>();
        for (GearLife life : lives()) {
            for (GearLoad load : life.loads()) {
                rows.add(List.of(
                        GearWords.time(load, screen),
                        life.name(winches.size() > 1),
                        load.event().onlyMayBe()
                                ? "may be"
                                : load.event().band().word(),
                        screen.bareForce(load.event().loadNewtons()),
                        (load.event().atLeast() ? "≥ " : "")
                                + (load.event().atLeast()
                                        ? Screen.percent(load.event().share())
                                        : Screen.percentAtMost(load.event().share())),
                        load.event().hookup() + (load.event().hookupIsAssumed() ? " (assumed)" : "")));
            }
        }
        List<Block> blocks = new ArrayList<>();
        if (rows.isEmpty()) {
            blocks.add(new Block.Paragraph("None in these recordings."));
        } else {
            List<List<String>> latest = rows.subList(Math.max(0, rows.size() - MOST_LOADS), rows.size());
            blocks.add(new Block.Table(
                    "Overloads of gear",
                    List.of(
                            Block.Column.left("When"),
                            Block.Column.left("Gear"),
                            Block.Column.left("Band"),
                            Block.Column.right("Load, " + screen.unit().symbol()),
                            Block.Column.right("Share"),
                            Block.Column.left("Hookup")),
                    latest));
        }
        if (rows.size() > MOST_LOADS) {
            blocks.add(new Block.Paragraph((rows.size() - MOST_LOADS) + " more are in --json."));
        }
        return new Document.Section("Overloads", blocks);
    }

    private List<String> know(List<String> notes) {
        List<String> know = new ArrayList<>(notes);
        know.add(
                "Loads and shares are figures of single readings, without their intervals; the report of the day has those.");
        know.add(
                "Several pieces in one hookup are each taken to carry all of the line's tension: which of them did is not known.");
        know.add("What was carried while nothing was recorded is not here.");
        return know;
    }
}
