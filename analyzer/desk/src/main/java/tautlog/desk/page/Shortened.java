package tautlog.desk.page;

import java.util.ArrayList;
import java.util.List;

/** Keeps lists to a length that somebody reads, and says so. */
final class Shortened {
    /** Chosen: about two printed pages. */
    static final int MOST = 100;

    private Shortened() {}

    static List<Block> bullets(List<String> lines) {
        List<Block> blocks = new ArrayList<>();
        if (!lines.isEmpty()) {
            blocks.add(new Block.Bullets(lines.subList(0, Math.min(MOST, lines.size()))));
        }
        if (lines.size() > MOST) {
            blocks.add(new Block.Paragraph("… and " + (lines.size() - MOST)
                    + " more. All of them are in --json and --csv; --from and --to choose a shorter time."));
        }
        return blocks;
    }
}
