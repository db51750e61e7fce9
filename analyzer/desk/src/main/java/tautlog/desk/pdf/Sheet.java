package tautlog.desk.pdf;

import java.time.Instant;
import java.util.List;

/**
 * What stands round a page on paper.
 *
 * @param head on top of every page, one line each: which recording, which link
 * @param created the creation time that the file states; the only thing in it that does not follow from the document
 */
public record Sheet(List<String> head, Instant created) {
    public Sheet {
        head = List.copyOf(head);
    }
}
