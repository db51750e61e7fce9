package tautlog.desk.page;

import java.util.List;

/** What every page that shows a force says, whatever the figures are. */
public final class StandingText {
    /** The section's heading. */
    public static final String HEADING = "Read this with every figure above";

    private StandingText() {}

    /** One sentence or two each. */
    public static List<String> sentences() {
        return List.of(
                "This is a measuring instrument, not a safety device: it holds nothing back and stops nothing.",
                "The maker's marking on the gear, local rules and licensed practice come first, before any limit shown"
                        + " here. Overloaded gear goes to a competent person.",
                "A slack line or a clear beacon is no permission to approach.",
                "Stay out of the bight and two tree lengths clear.",
                "Stop the engine before touching the shaft. Never cut a guard to fit the sensor.");
    }

    /** As a section of its own. */
    public static Document.Section section() {
        return new Document.Section(HEADING, List.of(new Block.Bullets(sentences())));
    }
}
