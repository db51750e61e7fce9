package tautlog.logger.notes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The pages for instrument builders hang together: every page is in the reading order, every link leads somewhere. */
class BuilderPagesTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)[^)]*\\)");

    private static List<Path> files(String ending) throws IOException {
        try (Stream<Path> all = Files.walk(BuilderPage.FOLDER)) {
            return all.filter(path -> path.toString().endsWith(ending)).sorted().toList();
        }
    }

    private static List<Path> linksOf(Path page) throws IOException {
        List<Path> targets = new ArrayList<>();
        Matcher link = LINK.matcher(Files.readString(page));
        while (link.find()) {
            targets.add(page.resolveSibling(link.group(1)).normalize());
        }
        return targets;
    }

    @Test
    void everyLinkLeadsToAFile() throws IOException {
        List<String> broken = new ArrayList<>();
        int links = 0;
        for (Path page : files(".md")) {
            for (Path target : linksOf(page)) {
                links++;
                if (!Files.exists(target)) {
                    broken.add(page.getFileName() + " -> " + target);
                }
            }
        }
        assertEquals(List.of(), broken);
        assertTrue(links > 30, "links found: " + links);
    }

    @Test
    void theReadingOrderNamesEveryPage() throws IOException {
        TreeSet<Path> pages = new TreeSet<>(files(".md"));
        pages.remove(BuilderPage.FOLDER.resolve("README.md"));
        assertEquals(pages, new TreeSet<>(linksOf(BuilderPage.FOLDER.resolve("README.md"))));
    }

    @Test
    void everyPictureIsShownOnSomePage() throws IOException {
        TreeSet<Path> shown = new TreeSet<>();
        for (Path page : files(".md")) {
            shown.addAll(linksOf(page));
        }
        shown.removeIf(path -> !path.toString().endsWith(".svg"));
        assertEquals(new TreeSet<>(files(".svg")), shown);
    }

    @Test
    void theReferenceNamesEachOfItsFiles() throws IOException {
        Path folder = BuilderPage.FOLDER.resolve("reference");
        TreeSet<Path> named = new TreeSet<>(linksOf(folder.resolve("README.md")));
        for (Path source : files(".c")) {
            assertTrue(named.contains(source), source.toString());
        }
        for (Path header : files(".h")) {
            assertTrue(named.contains(header), header.toString());
        }
    }

    /** Where work can hurt, the caution stands on the page itself. */
    @Test
    void cautionsStandWhereTheyBelong() throws IOException {
        Map<String, List<String>> cautions = Map.of(
                "README.md",
                List.of(
                        "holds nothing back",
                        "bight",
                        "two tree lengths",
                        "Stop the engine",
                        "competent person",
                        "marking"),
                "cell.md",
                List.of("bight", "Never weaken", "marked to carry load"),
                "shaft.md",
                List.of("Stop the engine", "stands still", "1928.57(b)(1)", "Never cut, drill or open a guard"),
                "operator.md",
                List.of("No permission to approach", "**not working**. Never clear", "3 s without BEACON is fault"));
        for (String page : cautions.keySet().stream().sorted().toList()) {
            String text = BuilderPage.read(page).lines().stream().collect(Collectors.joining(" "));
            for (String words : cautions.getOrDefault(page, List.of())) {
                assertTrue(text.contains(words), page + ": " + words);
            }
        }
    }
}
