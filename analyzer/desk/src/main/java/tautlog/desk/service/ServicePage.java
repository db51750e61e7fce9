package tautlog.desk.service;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tautlog.desk.gear.GearLife;
import tautlog.desk.gear.OutOnTop;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.StandingText;
import tautlog.service.Machine;
import tautlog.service.Since;
import tautlog.service.Standing;
import tautlog.service.TaskState;

/** What is due as a page for the evening: what is overdue first, then due, soon, not known; last what is not due. */
public final class ServicePage {
    private final ServiceState state;
    private final List<GearLife> lives;
    private final TaskWords words;
    private final boolean severalWinches;

    private ServicePage(ServiceState state, List<GearLife> lives) {
        this.state = state;
        this.lives = lives;
        words = new TaskWords(state.zone());
        severalWinches = state.machines().size() > 1;
    }

    /** @param lives of all gear, at the time of {@code state} */
    public static Document of(ServiceState state, List<GearLife> lives) {
        return new ServicePage(state, List.copyOf(lives)).document();
    }

    private Document document() {
        List<Document.Section> sections = new ArrayList<>();
        OutOnTop.section(lives, severalWinches).ifPresent(sections::add);
        state.doubts().section(state.leftOut()).ifPresent(sections::add);
        for (Standing standing : Standing.values()) {
            List<TaskState> tasks = state.tasks().stream()
                    .filter(task -> task.standing() == standing)
                    .toList();
            if (!tasks.isEmpty()) {
                sections.add(new Document.Section(heading(standing), blocks(standing, tasks)));
            }
        }
        if (state.tasks().isEmpty()) {
            sections.add(new Document.Section(
                    "Tasks",
                    List.of(new Block.Paragraph("None of the tasks is on a winch or gear of these recordings."))));
        }
        List<String> know = new ArrayList<>();
        know.add("The maker's manual of winch, shaft, rope and gear comes before any interval here.");
        if (state.tasks().stream().anyMatch(task -> task.since().kind() == Since.Kind.NEVER)) {
            know.add(
                    "What was never entered as done is counted from the first recording; what was before that is not known."
                            + " When was it last done? Enter it with --at.");
        }
        know.add("Enter what was done: tautlog service done TASK --ledger ledger.jsonl --by NAME.");
        know.addAll(state.notesBesideDoubts());
        sections.add(new Document.Section("Read this with the list", List.of(new Block.Bullets(know))));
        sections.add(new Document.Section(StandingText.HEADING, List.of(new Block.Bullets(StandingText.sentences()))));
        return new Document("Service of " + winches(), List.of(subtitle()), "", sections);
    }

    private String winches() {
        return state.machines().stream().map(Machine::winch).collect(Collectors.joining(", "));
    }

    private String subtitle() {
        String ledger = state.ledgerFile()
                .map(file -> "Ledger " + file.getFileName() + ": "
                        + state.ledger().entries().size()
                        + (state.ledger().entries().size() == 1 ? " entry counts." : " entries count."))
                .orElse("No ledger was read.");
        return "As of " + words.time(state.asOf()) + ". " + ledger;
    }

    static String heading(Standing standing) {
        return switch (standing) {
            case OVERDUE -> "Overdue";
            case DUE -> "Due";
            case SOON -> "Due soon";
            case UNKNOWN -> "Not known: may be due";
            case LATER -> "Not yet due, as far as is known";
        };
    }

    private List<Block> blocks(Standing standing, List<TaskState> tasks) {
        List<Block> blocks = new ArrayList<>();
        if (standing == Standing.LATER) {
            List<String> items = tasks.stream().map(this::later).toList();
            return List.of(new Block.Bullets(items));
        }
        boolean isAction = standing == Standing.OVERDUE || standing == Standing.DUE;
        for (TaskState task : tasks) {
            blocks.add(
                    new Block.Notice(isAction ? Block.Tone.ACTION : Block.Tone.CAUTION, label(task), sentences(task)));
        }
        return blocks;
    }

    /** Of what only a happening calls for, nothing shows in its figures that something may have happened unseen. */
    private String later(TaskState task) {
        String doubts = task.task().after().isPresent() ? String.join(" ", task.doubts()) : "";
        return (label(task) + ": " + figures(task) + " " + doubts).strip();
    }

    private String label(TaskState task) {
        return (severalWinches ? task.winch() + ", " : "") + task.task().id();
    }

    private String figures(TaskState task) {
        return words.why(task) + "; " + words.since(task.since()) + ".";
    }

    private String sentences(TaskState task) {
        List<String> sentences = new ArrayList<>();
        sentences.add(withStop(task.task().title()));
        sentences.add(upperFirst(figures(task)));
        if (task.standing() != Standing.UNKNOWN && task.mayBe() != task.standing()) {
            sentences.add("It may be " + task.mayBe().name().toLowerCase(Locale.ROOT) + " by what is not known.");
        }
        sentences.addAll(task.doubts());
        task.task().how().ifPresent(sentences::add);
        task.task().source().ifPresent(source -> sentences.add("(" + source + ")"));
        return String.join(" ", sentences);
    }

    private static String upperFirst(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    private static String withStop(String sentence) {
        return sentence.endsWith(".") ? sentence : sentence + ".";
    }
}
