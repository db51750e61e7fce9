package tautlog.desk.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The fonts of a page on paper: DejaVu Sans Condensed, regular and bold. What one of them has no shape for is written out as its
 * number, {@code [U+6728]}: a stand-in would make different names look the same.
 */
final class PaperFonts {
    private final byte[] regular;
    private final byte[] bold;
    private final CmapLookup regularShapes;
    private final CmapLookup boldShapes;

    private PaperFonts(byte[] regular, byte[] bold) throws IOException {
        this.regular = regular;
        this.bold = bold;
        regularShapes = shapes(regular);
        boldShapes = shapes(bold);
    }

    static PaperFonts load() throws IOException {
        return new PaperFonts(resource("DejaVuSansCondensed.ttf"), resource("DejaVuSansCondensed-Bold.ttf"));
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = PaperFonts.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the program's jar");
            }
            return in.readAllBytes();
        }
    }

    private static CmapLookup shapes(byte[] font) throws IOException {
        try (TrueTypeFont parsed = new TTFParser().parse(new RandomAccessReadBuffer(font))) {
            return parsed.getUnicodeCmapLookup();
        }
    }

    InputStream regular() {
        return new ByteArrayInputStream(regular);
    }

    InputStream bold() {
        return new ByteArrayInputStream(bold);
    }

    /** {@code text} in characters that both fonts can show. */
    String shown(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            if (isShown(c)) {
                out.appendCodePoint(c);
            } else {
                out.append(String.format(Locale.ROOT, "[U+%04X]", c));
            }
        });
        return out.toString();
    }

    private boolean isShown(int c) {
        return c == '\n' || c == '\t' || (regularShapes.getGlyphId(c) != 0 && boldShapes.getGlyphId(c) != 0);
    }
}
