package tautlog.desk.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import tautlog.rig.Driveline;
import tautlog.usage.DrivelineUse;
import tautlog.usage.Extent;
import tautlog.usage.TorqueSpeedCell;

class UseDrawingsTest {
    private static final long SECOND = 1_000_000_000;
    private static final Driveline LINE =
            new Driveline(0.09, 0.011, 4, 14, 0.75, 1120, 540, OptionalDouble.empty(), OptionalDouble.empty());

    private static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static DrivelineUse use(TorqueSpeedCell... cells) {
        return new DrivelineUse(1, 0, List.of(cells), List.of(), 0, 0, 0, 0, 0, Extent.NONE, Extent.NONE, 0, 0);
    }

    @Test
    void drawsTimeByTorqueAndSpeedWithItsRating() throws Exception {
        DrivelineUse use = use(new TorqueSpeedCell(10, 9, 400 * SECOND), new TorqueSpeedCell(13, 10, 100 * SECOND));

        var figure = UseDrawings.torqueOverSpeed("t1", use, UseDrawings.Layer.FIRST, Optional.of(LINE))
                .orElseThrow();

        Document svg = parsed(figure.svg());
        List<Element> cells = elements(svg, "rect");
        assertEquals(2, cells.size());
        // a quarter of the time: half the side
        double most = Double.parseDouble(cells.get(0).getAttribute("width"));
        assertEquals(most / 2, Double.parseDouble(cells.get(1).getAttribute("width")), 0.1);
        // the rated torque is the upper edge of the cell "90 to 100 %"
        double upper = Double.parseDouble(cells.get(0).getAttribute("y"));
        assertTrue(figure.svg().contains("torque, % of rated, 100 % = 1120 N m"));
        assertTrue(figure.svg().contains("speed, % of rated, 100 % = 540 rpm"));
        assertEquals(2, figure.svg().split("class=\"rating\"", -1).length - 1);
        double rating =
                Double.parseDouble(figure.svg().replaceAll("(?s).*class=\"rating\" d=\"M84 ([0-9.]+)H.*", "$1"));
        assertEquals(rating, upper - 1, 0.2);
        assertTrue(elements(svg, "title").get(0).getTextContent().contains("1:40 min above the rated torque"));
    }

    @Test
    void drawsNothingWhereNothingIsKnown() {
        assertEquals(
                Optional.empty(),
                UseDrawings.torqueOverSpeed("t1", DrivelineUse.NONE, UseDrawings.Layer.LAST, Optional.empty()));
    }

    @Test
    void drawsLoadBandsInWordsToo() throws Exception {
        var figure = UseDrawings.loadBands("b1", List.of(1.0, 0.5, 0.0, 0.25, 0.125));

        Document svg = parsed(figure.svg());
        List<Element> bars = elements(svg, "rect");
        assertEquals(5, bars.size());
        assertEquals("480.0", bars.get(0).getAttribute("width"));
        assertEquals("240.0", bars.get(1).getAttribute("width"));
        assertEquals("url(#hb1)", bars.get(4).getAttribute("fill"), "hatched: colour alone tells nothing");
        assertTrue(elements(svg, "title").get(0).getTextContent().contains("above 100 %: 7:30 min"));
        var nothing = UseDrawings.loadBands("b2", List.of(0.0, 0.0, 0.0, 0.0, 0.0));
        assertEquals(5, elements(parsed(nothing.svg()), "rect").size());
    }

    private static List<Element> elements(Document svg, String name) {
        var found = svg.getElementsByTagName(name);
        return java.util.stream.IntStream.range(0, found.getLength())
                .mapToObj(i -> (Element) found.item(i))
                .toList();
    }
}
