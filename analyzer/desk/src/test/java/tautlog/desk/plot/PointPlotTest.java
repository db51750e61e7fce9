package tautlog.desk.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class PointPlotTest {
    private static final PointPlot.Caption CAPTION = new PointPlot.Caption("p", "a < b", "load, kN", "residual, N");

    private static Document draw(List<PointPlot.Point> points) throws Exception {
        String svg =
                PointPlot.draw(CAPTION, List.of(new PointPlot.Series("up", PointPlot.Mark.UPWARD, points)), List.of());
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static List<double[]> marks(Document svg) {
        NodeList paths = svg.getElementsByTagName("path");
        return java.util.stream.IntStream.range(0, paths.getLength())
                .mapToObj(i -> (Element) paths.item(i))
                .filter(path -> path.getAttribute("class").equals("mark"))
                .map(path -> path.getAttribute("transform")
                        .replaceAll("[^0-9. -]", "")
                        .trim()
                        .split(" "))
                .map(place -> new double[] {Double.parseDouble(place[0]), Double.parseDouble(place[1])})
                .toList();
    }

    @Test
    void drawsEachPointOnceInsideTheDrawingGreaterOnesFurtherRightAndHigher() throws Exception {
        Document svg = draw(List.of(new PointPlot.Point(0, -3), new PointPlot.Point(40, 5)));

        List<double[]> marks = marks(svg); // the last one is the legend's
        String[] box = svg.getDocumentElement().getAttribute("viewBox").split(" ");
        assertEquals(3, marks.size());
        assertTrue(marks.get(1)[0] > marks.get(0)[0]);
        assertTrue(marks.get(1)[1] < marks.get(0)[1]);
        for (double[] mark : marks) {
            assertTrue(mark[0] >= 0 && mark[0] <= Double.parseDouble(box[2]));
            assertTrue(mark[1] >= 0 && mark[1] <= Double.parseDouble(box[3]));
        }
    }

    @Test
    void drawsASinglePointAndResidualsThatAreAllNothing() throws Exception {
        assertEquals(2, marks(draw(List.of(new PointPlot.Point(7, 7)))).size());
        assertEquals(
                3,
                marks(draw(List.of(new PointPlot.Point(0, 0), new PointPlot.Point(1, 0))))
                        .size());
    }

    @Test
    void refusesToDrawNothing() {
        assertThrows(IllegalArgumentException.class, () -> PointPlot.draw(CAPTION, List.of(), List.of()));
    }
}
