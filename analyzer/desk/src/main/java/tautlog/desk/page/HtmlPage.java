package tautlog.desk.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Sets a {@link Document} as one self-contained file: styles and drawings inside, no script, nothing fetched. The markup
 * is well-formed XML as well as HTML, so that it can be checked and read by either kind of program.
 */
public final class HtmlPage implements Block.Layout {
    private final StringBuilder out = new StringBuilder();

    private HtmlPage() {}

    public static String render(Document document) {
        return new HtmlPage().page(document, List.of(), "");
    }

    /**
     * The same page for a program that sets it on paper.
     *
     * @param head lines that stand on every sheet, above the banner
     * @param paperStyle styles that come after the page's own
     */
    public static String renderForPaper(Document document, List<String> head, String paperStyle) {
        return new HtmlPage().page(document, head, paperStyle);
    }

    private String page(Document document, List<String> head, String paperStyle) {
        head(document, paperStyle);
        if (paperStyle.isEmpty()) {
            banner(document.banner());
        } else {
            sheetHead(head, document.banner());
        }
        title(document);
        contents(document.sections());
        int number = 0;
        for (Document.Section section : document.sections()) {
            section(section, ++number);
        }
        out.append("</main>\n</div>\n</div>\n</body>\n</html>\n");
        return out.toString();
    }

    private void head(Document document, String paperStyle) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\">\n<head>\n")
                .append("<meta charset=\"utf-8\"/>\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n")
                .append("<meta http-equiv=\"Content-Security-Policy\"")
                .append(" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n");
        element("title", document.title());
        out.append("<style>\n").append(style()).append(paperStyle);
        out.append("</style>\n</head>\n<body>\n<div class=\"sheet\">\n");
    }

    private void title(Document document) {
        out.append("<div class=\"sheet-body\">\n<header>\n");
        element("h1", document.title());
        document.subtitle().forEach(text -> element("p", text));
        out.append("</header>\n<main>\n");
    }

    /** Stays on top of the screen, and of every printed page. */
    private void banner(String banner) {
        if (!banner.isEmpty()) {
            out.append("<div class=\"sheet-head\"><p class=\"banner\" role=\"note\">");
            out.append(Markup.escape(banner)).append("</p></div>\n");
        }
    }

    private void sheetHead(List<String> lines, String banner) {
        out.append("<div class=\"paper-top\">\n");
        lines.forEach(line -> element("p", line));
        if (!banner.isEmpty()) {
            out.append("<p class=\"banner\">").append(Markup.escape(banner)).append("</p>\n");
        }
        out.append("</div>\n");
    }

    private void contents(List<Document.Section> sections) {
        out.append("<nav aria-label=\"Sections\"><ul>");
        int number = 0;
        for (Document.Section section : sections) {
            out.append("<li><a href=\"#s").append(++number).append("\">");
            out.append(Markup.escape(section.heading())).append("</a></li>");
        }
        out.append("</ul></nav>\n");
    }

    private void section(Document.Section section, int number) {
        out.append("<section aria-labelledby=\"s").append(number).append("\">\n");
        out.append("<h2 id=\"s").append(number).append("\">");
        out.append(Markup.escape(section.heading())).append("</h2>\n");
        section.blocks().forEach(block -> block.show(this));
        out.append("</section>\n");
    }

    @Override
    public void paragraph(Block.Paragraph paragraph) {
        element("p", paragraph.text());
    }

    @Override
    public void heading(Block.Heading heading) {
        element("h3", heading.text());
    }

    @Override
    public void notice(Block.Notice notice) {
        boolean action = notice.tone() == Block.Tone.ACTION;
        out.append(action ? "<p class=\"action\">" : "<p class=\"caution\">");
        if (!notice.label().isEmpty()) {
            out.append("<strong>").append(Markup.escape(notice.label())).append(":</strong> ");
        }
        out.append(text(notice.text())).append("</p>\n");
    }

    @Override
    public void bullets(Block.Bullets bullets) {
        out.append("<ul>\n");
        bullets.items().forEach(item -> element("li", item));
        out.append("</ul>\n");
    }

    @Override
    public void table(Block.Table table) {
        out.append("<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"");
        out.append(Markup.escape(table.caption()))
                .append(table.narrow() == Block.Narrow.STACKS ? "\">\n<table class=\"stacks\">\n" : "\">\n<table>\n");
        element("caption", table.caption());
        out.append("<thead><tr>");
        for (Block.Column column : table.columns()) {
            cell("th scope=\"col\"", "th", column, column.head());
        }
        out.append("</tr></thead>\n<tbody>\n");
        table.rows().forEach(row -> row(table, row));
        out.append("</tbody>\n</table>\n</div>\n");
    }

    private void row(Block.Table table, List<String> cells) {
        out.append("<tr>");
        for (int i = 0; i < cells.size(); i++) {
            boolean first = i == 0;
            Block.Column column = table.columns().get(i);
            String head =
                    table.narrow() == Block.Narrow.STACKS ? " data-head=\"" + Markup.escape(column.head()) + "\"" : "";
            cell((first ? "th scope=\"row\"" : "td") + head, first ? "th" : "td", column, cells.get(i));
        }
        out.append("</tr>\n");
    }

    private void cell(String open, String close, Block.Column column, String text) {
        out.append('<').append(open);
        out.append(column.align() == Block.Align.RIGHT ? " class=\"n\">" : ">");
        out.append(Markup.escape(text)).append("</").append(close).append('>');
    }

    @Override
    public void figure(Block.Figure figure) {
        out.append("<figure>\n<figcaption>").append(Markup.escape(figure.title()));
        out.append("</figcaption>\n<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"");
        out.append(Markup.escape(figure.title())).append("\">\n");
        out.append(figure.svg()).append("\n</div>\n</figure>\n");
    }

    private void element(String name, String text) {
        out.append('<').append(name).append('>').append(text(text));
        out.append("</").append(name).append(">\n");
    }

    /** Keeps a number and its unit on one line. */
    private static String text(String text) {
        return Markup.escape(text.replaceAll("(?<=\\d) (?=%|(kN|daN|kgf|t|lbf|s|min|h|rpm)\\b)", "\u00A0"));
    }

    private static String style() {
        try (InputStream css = HtmlPage.class.getResourceAsStream("page.css")) {
            if (css == null) {
                throw new IllegalStateException("page.css is missing from the program's jar");
            }
            return new String(css.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
