package tautlog.desk.page;

import java.util.ArrayList;
import java.util.List;

/** Sets a {@link Document} in plain characters, 80 columns wide; drawings are left out. */
public final class TextPage implements Block.Layout {
    /** Chosen: the width that every terminal and every printer has. */
    static final int WIDTH = 80;

    private static final String GAP = "  ";

    private final StringBuilder out = new StringBuilder();
    private final Ink ink;

    private TextPage(Ink ink) {
        this.ink = ink;
    }

    /** The whole page, each line ended by a line feed, none longer than 80 characters but where one word is. */
    public static String render(Document document, Ink ink) {
        TextPage page = new TextPage(ink);
        page.head(document);
        for (Document.Section section : document.sections()) {
            page.section(section);
        }
        return page.out.toString();
    }

    private void head(Document document) {
        wrap("", "", document.title()).forEach(line -> line(ink.bold(line)));
        document.subtitle().forEach(text -> wrap("", "", text).forEach(this::line));
        if (!document.banner().isEmpty()) {
            line("");
            wrap("*** ", "    ", document.banner()).forEach(line -> line(ink.bold(line)));
        }
    }

    private void section(Document.Section section) {
        line("");
        line(ink.bold(section.heading().toUpperCase(java.util.Locale.ROOT)));
        section.blocks().forEach(block -> block.show(this));
    }

    @Override
    public void paragraph(Block.Paragraph paragraph) {
        wrap(GAP, GAP, paragraph.text()).forEach(this::line);
    }

    @Override
    public void heading(Block.Heading heading) {
        wrap("", GAP, heading.text()).forEach(line -> line(ink.bold(line)));
    }

    @Override
    public void notice(Block.Notice notice) {
        String mark = notice.tone() == Block.Tone.ACTION ? "! " : "- ";
        String lead = notice.label().isEmpty() ? "" : notice.label() + ": ";
        List<String> lines = wrap(mark, GAP, lead + notice.text());
        boolean loud = notice.tone() == Block.Tone.ACTION;
        lines.forEach(line -> line(loud ? ink.loud(line) : line));
    }

    @Override
    public void bullets(Block.Bullets bullets) {
        bullets.items().forEach(item -> wrap("- ", GAP, item).forEach(this::line));
    }

    @Override
    public void table(Block.Table table) {
        int[] widths = widths(table);
        List<String> heads = table.columns().stream().map(Block.Column::head).toList();
        row(table, widths, heads);
        table.rows().forEach(cells -> row(table, widths, cells));
    }

    @Override
    public void figure(Block.Figure figure) {
        // what a drawing shows stands in words beside it
    }

    private static int[] widths(Block.Table table) {
        int[] widths = new int[table.columns().size()];
        for (int i = 0; i < widths.length; i++) {
            widths[i] = table.columns().get(i).head().length();
            for (List<String> row : table.rows()) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        return widths;
    }

    /** A row too long for the page has its last cell on lines of its own. */
    private void row(Block.Table table, int[] widths, List<String> cells) {
        int last = widths.length - 1;
        String whole = cells(table, widths, cells, last);
        if (whole.length() <= WIDTH || last == 0) {
            line(whole);
            return;
        }
        line(cells(table, widths, cells, last - 1));
        wrap("      ", "      ", cells.get(last)).forEach(this::line);
    }

    private static String cells(Block.Table table, int[] widths, List<String> cells, int last) {
        StringBuilder row = new StringBuilder(" ");
        for (int i = 0; i <= last; i++) {
            String cell = printable(cells.get(i));
            String pad = " ".repeat(widths[i] - cell.length());
            boolean right = table.columns().get(i).align() == Block.Align.RIGHT;
            row.append(' ').append(right ? pad + cell : cell + pad);
            row.append(i < last ? " " : "");
        }
        return row.toString().stripTrailing();
    }

    /**
     * Names and notes come from recordings: a control character in one must not steer the terminal, nor a sign of direction make the line
     * round it read otherwise. Each becomes a question mark: as wide as itself, and on every terminal.
     */
    static String printable(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> out.appendCodePoint(Markup.isShown(c) && c >= 0x20 ? c : '?'));
        return out.toString();
    }

    private void line(String line) {
        out.append(line).append('\n');
    }

    /** Breaks {@code text} at spaces: {@code first} before its first line, {@code rest} before the others. */
    static List<String> wrap(String first, String rest, String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        int empty = line.length();
        for (String word : printable(text).split(" ", -1)) {
            if (line.length() > empty && line.length() + 1 + word.length() > WIDTH) {
                lines.add(line.toString());
                line = new StringBuilder(rest);
                empty = line.length();
            }
            line.append(line.length() > empty ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
