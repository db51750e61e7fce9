package tautlog.desk.page;

import java.util.List;

/**
 * What is drawn on a page; empty lists for a page without drawings.
 *
 * @param days tension and shaft of each day
 * @param moments the seconds around each overload, shock, jolt and drop, in the order of time
 * @param momentsLeftOut how many of those got no drawing
 */
public record Drawings(List<Block.Figure> days, List<Block.Figure> moments, int momentsLeftOut) {
    public static final Drawings NONE = new Drawings(List.of(), List.of(), 0);

    public Drawings {
        days = List.copyOf(days);
        moments = List.copyOf(moments);
    }
}
