package tautlog.desk.hours;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.desk.drawing.UseDrawings;
import tautlog.desk.gear.DrivelineSection;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.use.OutingUse;
import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.usage.DrivelineUse;

/** What a page of hours shows where drawings can be shown: bands of the limit, and each winch's shaft. */
public final class HoursDrawings {
    private HoursDrawings() {}

    /** @param rigs the latest of each winch, by its name; a winch whose rig cannot be read is not among them */
    public static List<Document.Section> of(List<OutingUse> uses, HoursTable table, Map<String, Rig> rigs) {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(new Document.Section(
                "Load bands",
                List.of(UseDrawings.loadBands("bands", table.total().meters().bandHours()))));
        Map<String, DrivelineUse> byWinch = new LinkedHashMap<>();
        uses.forEach(use -> byWinch.merge(use.at().winch(), use.machine().driveline(), DrivelineUse::plus));
        byWinch.forEach((winch, use) -> {
            Optional<Driveline> line = Optional.ofNullable(rigs.get(winch)).flatMap(Rig::driveline);
            Document.Section section =
                    new DrivelineSection(use, line, "Driveline of " + winch, "shaft" + sections.size()).section();
            List<Block> blocks = new ArrayList<>(section.blocks());
            blocks.addAll(DrivelineTable.of(use));
            sections.add(new Document.Section(section.heading(), blocks));
        });
        return sections;
    }
}
