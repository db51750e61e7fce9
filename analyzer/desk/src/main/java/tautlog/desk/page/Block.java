package tautlog.desk.page;

import java.util.List;

/** A piece of a page; each kind knows which call of {@link Layout} shows it. */
public sealed interface Block {
    void show(Layout layout);

    /** What a kind of page does with each kind of block. */
    interface Layout {
        void paragraph(Paragraph paragraph);

        void heading(Heading heading);

        void notice(Notice notice);

        void bullets(Bullets bullets);

        void table(Table table);

        void figure(Figure figure);
    }

    /** Plain words. */
    record Paragraph(String text) implements Block {
        @Override
        public void show(Layout layout) {
            layout.paragraph(this);
        }
    }

    /** What the blocks up to the next heading are about. */
    record Heading(String text) implements Block {
        @Override
        public void show(Layout layout) {
            layout.heading(this);
        }
    }

    /**
     * Words that must not be missed.
     *
     * @param label one or two words that say what kind of notice this is, so that colour is never the only sign
     */
    record Notice(Tone tone, String label, String text) implements Block {
        @Override
        public void show(Layout layout) {
            layout.notice(this);
        }
    }

    /** How loud a notice is. */
    enum Tone {
        ACTION,
        CAUTION
    }

    /** A list of sentences. */
    record Bullets(List<String> items) implements Block {
        public Bullets {
            items = List.copyOf(items);
        }

        @Override
        public void show(Layout layout) {
            layout.bullets(this);
        }
    }

    /**
     * Rows under column heads.
     *
     * @param caption what the table holds
     * @param rows each as long as {@code columns}; a cell that is not known says so in words
     * @param narrow what it does where it is wider than the page
     */
    record Table(String caption, List<Column> columns, List<List<String>> rows, Narrow narrow) implements Block {
        /** One that is scrolled sideways where it is wider than the page: figures that are compared by columns. */
        public Table(String caption, List<Column> columns, List<List<String>> rows) {
            this(caption, columns, rows, Narrow.SCROLLS);
        }

        public Table {
            columns = List.copyOf(columns);
            rows = rows.stream().map(List::copyOf).toList();
            for (List<String> row : rows) {
                if (row.size() != columns.size()) {
                    throw new IllegalArgumentException("row of " + row.size() + " cells under " + columns.size()
                            + " columns in " + caption + ": " + row);
                }
            }
        }

        @Override
        public void show(Layout layout) {
            layout.table(this);
        }
    }

    /** What a table does where it is wider than the page. */
    enum Narrow {
        /** Its columns stay beside each other. */
        SCROLLS,
        /** The cells of a row stand under each other, each with its head; long texts wrap. */
        STACKS
    }

    /** A table's column. */
    record Column(String head, Align align) {
        public static Column left(String head) {
            return new Column(head, Align.LEFT);
        }

        public static Column right(String head) {
            return new Column(head, Align.RIGHT);
        }
    }

    /** To which side cells stand. */
    enum Align {
        LEFT,
        RIGHT
    }

    /**
     * A drawing, shown where drawings can be shown; what it says stands in words elsewhere on the page.
     *
     * @param title what it shows
     * @param svg a complete {@code svg} element with its own description for people who do not see it
     */
    record Figure(String title, String svg) implements Block {
        @Override
        public void show(Layout layout) {
            layout.figure(this);
        }
    }
}
