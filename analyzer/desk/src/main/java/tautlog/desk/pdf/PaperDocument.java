package tautlog.desk.pdf;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Attr;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Our own page's markup as a tree, made ready for paper: an outline, words for each drawing, only characters that the fonts have. */
final class PaperDocument {
    private static final String XHTML = "http://www.w3.org/1999/xhtml";

    /** Chosen: about a quarter of a sheet. */
    private static final int SHORT_ROWS = 12;

    private final PaperFonts fonts;

    PaperDocument(PaperFonts fonts) {
        this.fonts = fonts;
    }

    /** @param html well-formed, as {@link tautlog.desk.page.HtmlPage} writes it */
    Document of(String html) {
        Document tree = parse(html);
        outline(tree);
        drawings(tree);
        tables(tree);
        show(tree.getDocumentElement());
        return tree;
    }

    private static Document parse(String html) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            DocumentBuilder builder = factory.newDocumentBuilder();
            return builder.parse(new InputSource(new StringReader(html)));
        } catch (ParserConfigurationException | SAXException e) {
            throw new IllegalStateException("our own page is not well-formed", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringReader throws none
        }
    }

    /** The sections, in the list that a reading program shows beside the pages. */
    private static void outline(Document tree) {
        Element all = tree.createElementNS(XHTML, "bookmarks");
        NodeList heads = tree.getElementsByTagNameNS(XHTML, "h2");
        for (int i = 0; i < heads.getLength(); i++) {
            Element head = (Element) heads.item(i);
            Element one = tree.createElementNS(XHTML, "bookmark");
            one.setAttribute("name", head.getTextContent());
            one.setAttribute("href", "#" + head.getAttribute("id"));
            all.appendChild(one);
        }
        tree.getElementsByTagNameNS(XHTML, "head").item(0).appendChild(all);
    }

    private static void drawings(Document tree) {
        NodeList drawings = tree.getElementsByTagNameNS("http://www.w3.org/2000/svg", "svg");
        for (int i = 0; i < drawings.getLength(); i++) {
            Element drawing = (Element) drawings.item(i);
            drawing.setAttribute(
                    "alt", drawing.getElementsByTagNameNS("*", "title").item(0).getTextContent());
        }
    }

    /** A short table stays on one sheet; a long one goes on with its heads on the next. */
    private static void tables(Document tree) {
        NodeList tables = tree.getElementsByTagNameNS(XHTML, "table");
        for (int i = 0; i < tables.getLength(); i++) {
            Element table = (Element) tables.item(i);
            if (table.getElementsByTagNameNS(XHTML, "tr").getLength() <= SHORT_ROWS) {
                table.setAttribute("class", "short");
            }
        }
    }

    private void show(Node node) {
        if (node.getNodeType() == Node.TEXT_NODE) {
            node.setNodeValue(fonts.shown(node.getNodeValue()));
        }
        NamedNodeMap attributes = node.getAttributes();
        for (int i = 0; attributes != null && i < attributes.getLength(); i++) {
            Attr attribute = (Attr) attributes.item(i);
            attribute.setValue(fonts.shown(attribute.getValue()));
        }
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            show(child);
        }
    }
}
