package tautlog.desk.pdf;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import tautlog.desk.page.Document;
import tautlog.desk.page.HtmlPage;

/**
 * Sets a {@link Document} as PDF: the page of {@link HtmlPage} with the styles for paper. Text is text, fonts are embedded, headings,
 * tables and drawings are tagged (PDF/UA), and nothing outside the document is read.
 */
public final class PdfPage {
    /** Chosen: any fixed number will do; the file's identifier is made of it and of title, producer and creation time. */
    private static final long IDENTIFIER = 0x7A7109L;

    /** Characters that surely fit on a line of the head, and of the banner; chosen by looking. */
    private static final int HEAD_LINE = 110;

    private static final int BANNER_LINE = 85;

    private PdfPage() {}

    /** The file. The same arguments give the same bytes. */
    public static byte[] render(Document document, Sheet sheet) throws IOException {
        XRLog.setLoggingEnabled(false); // it would talk to the standard error
        PaperFonts fonts = PaperFonts.load();
        String html = HtmlPage.renderForPaper(document, sheet.head(), style() + roomAbove(document, sheet));
        try (PdfBoxRenderer renderer = builder(html, fonts).buildPdfRenderer()) {
            renderer.layout();
            try (PDDocument pdf = renderer.createPDFKeepOpen()) {
                state(pdf, document, sheet);
                return bytes(pdf);
            }
        }
    }

    /** What the file says of itself, in place of what the library put there, its own clock's time included. */
    private static void state(PDDocument pdf, Document document, Sheet sheet) {
        PDDocumentInformation stated = new PDDocumentInformation();
        stated.setTitle(document.title());
        stated.setProducer("tautlog");
        stated.setCreationDate(created(sheet));
        pdf.setDocumentInformation(stated);
        pdf.setDocumentId(IDENTIFIER);
    }

    private static GregorianCalendar created(Sheet sheet) {
        return GregorianCalendar.from(ZonedDateTime.ofInstant(sheet.created(), ZoneOffset.UTC));
    }

    private static PdfRendererBuilder builder(String html, PaperFonts fonts) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFont(fonts::regular, "Paper", 400, FontStyle.NORMAL, true);
        builder.useFont(fonts::bold, "Paper", 700, FontStyle.NORMAL, true);
        builder.usePdfUaAccessibility(true);
        builder.usePdfVersion(1.7f);
        builder.withProducer("tautlog");
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUriResolver((base, uri) -> uri.startsWith("#") ? uri : "");
        builder.withW3cDocument(new PaperDocument(fonts).of(html), "");
        return builder;
    }

    private static byte[] bytes(PDDocument pdf) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        pdf.save(out);
        return out.toByteArray();
    }

    /** Head and banner stand in the upper margin: as much as their lines need. */
    private static String roomAbove(Document document, Sheet sheet) {
        int head =
                sheet.head().stream().mapToInt(line -> lines(line, HEAD_LINE)).sum();
        int banner = document.banner().isEmpty() ? 0 : 1 + lines(document.banner(), BANNER_LINE);
        return "@page { margin-top: " + (14 + 5 * head + 4 * banner) + "mm; }\n";
    }

    private static int lines(String text, int length) {
        return (text.length() + length - 1) / length;
    }

    private static String style() throws IOException {
        try (InputStream css = PdfPage.class.getResourceAsStream("pdf.css")) {
            if (css == null) {
                throw new IllegalStateException("pdf.css is missing from the program's jar");
            }
            return new String(css.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
