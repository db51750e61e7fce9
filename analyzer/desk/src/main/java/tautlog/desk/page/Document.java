package tautlog.desk.page;

import java.util.List;

/**
 * A page before it has a look.
 *
 * @param title one line
 * @param subtitle what it is about: files, times; one line each
 * @param banner repeated on top of every printed page ("WHAT IF …"); empty when there is none
 * @param sections in the order of reading
 */
public record Document(String title, List<String> subtitle, String banner, List<Section> sections) {
    public Document {
        subtitle = List.copyOf(subtitle);
        sections = List.copyOf(sections);
    }

    /** A heading and what stands under it. */
    public record Section(String heading, List<Block> blocks) {
        public Section {
            blocks = List.copyOf(blocks);
        }
    }
}
