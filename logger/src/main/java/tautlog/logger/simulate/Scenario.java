package tautlog.logger.simulate;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** The stories that can be played. */
public enum Scenario {
    AFTERNOON("afternoon", "hours of ordinary work, with small trouble now and then", Afternoon::play),
    SLACK_SNAP("slack-snap", "a log breaks loose on a slope and takes up a slack line", Mishaps::slackSnap),
    REDIRECT("redirect", "a heavy pull round a block overloads its strap", Mishaps::redirect),
    STUMP("stump", "the butt meets a stump and hops over it", Mishaps::stump),
    PARTING("parting", "a worn choker lets go, the shaft runs up", Mishaps::parting),
    CABLE_FAULT("cable-fault", "the cell's cable breaks, works, breaks again", Mishaps::cableFault),
    STALL("stall", "a log that does not come stalls the engine", Mishaps::stall),
    BLACKOUT("blackout", "the instrument loses power in a pull and starts again", Mishaps::blackout);

    private final String id;
    private final String about;

    @SuppressWarnings("ImmutableEnumChecker") // method references without state
    private final Consumer<Crew> story;

    Scenario(String id, String about, Consumer<Crew> story) {
        this.id = id;
        this.about = about;
        this.story = story;
    }

    public String id() {
        return id;
    }

    /** One line for a person. */
    public String about() {
        return about;
    }

    void play(Crew crew) {
        story.accept(crew);
    }

    public static Optional<Scenario> named(String id) {
        return Arrays.stream(values()).filter(s -> s.id.equals(id)).findFirst();
    }

    /** All names, for messages. */
    public static String names() {
        return Arrays.stream(values()).map(Scenario::id).collect(Collectors.joining(", "));
    }
}
