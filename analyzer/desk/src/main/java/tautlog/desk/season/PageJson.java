package tautlog.desk.season;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;

/** A document as JSON, for a page that sets its texts as text; a drawing is its {@code svg} element. */
public final class PageJson implements Block.Layout {
    private JsonArray blocks = new JsonArray();

    private PageJson() {}

    public static JsonObject of(Document document) {
        JsonObject json = new JsonObject();
        json.addProperty("title", document.title());
        json.add("subtitle", texts(document.subtitle()));
        json.addProperty("banner", document.banner());
        JsonArray sections = new JsonArray();
        PageJson layout = new PageJson();
        for (Document.Section section : document.sections()) {
            layout.blocks = new JsonArray();
            section.blocks().forEach(block -> block.show(layout));
            JsonObject one = new JsonObject();
            one.addProperty("heading", section.heading());
            one.add("blocks", layout.blocks);
            sections.add(one);
        }
        json.add("sections", sections);
        return json;
    }

    private static JsonArray texts(List<String> texts) {
        JsonArray array = new JsonArray();
        texts.forEach(array::add);
        return array;
    }

    private JsonObject block(String kind) {
        JsonObject block = new JsonObject();
        block.addProperty("kind", kind);
        blocks.add(block);
        return block;
    }

    @Override
    public void paragraph(Block.Paragraph paragraph) {
        block("paragraph").addProperty("text", paragraph.text());
    }

    @Override
    public void heading(Block.Heading heading) {
        block("heading").addProperty("text", heading.text());
    }

    @Override
    public void notice(Block.Notice notice) {
        JsonObject block = block(notice.tone() == Block.Tone.ACTION ? "action" : "caution");
        block.addProperty("label", notice.label());
        block.addProperty("text", notice.text());
    }

    @Override
    public void bullets(Block.Bullets bullets) {
        block("bullets").add("items", texts(bullets.items()));
    }

    @Override
    public void table(Block.Table table) {
        JsonObject block = block("table");
        block.addProperty("caption", table.caption());
        JsonArray heads = new JsonArray();
        JsonArray numeric = new JsonArray();
        for (Block.Column column : table.columns()) {
            heads.add(column.head());
            numeric.add(column.align() == Block.Align.RIGHT);
        }
        block.add("heads", heads);
        block.add("numeric", numeric);
        JsonArray rows = new JsonArray();
        table.rows().forEach(row -> rows.add(texts(row)));
        block.add("rows", rows);
    }

    @Override
    public void figure(Block.Figure figure) {
        JsonObject block = block("figure");
        block.addProperty("title", figure.title());
        block.addProperty("svg", figure.svg());
    }
}
