package tautlog.desk.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.recording.NotedLink;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;

/** Links that were kept elsewhere, held against recordings. */
final class KeptLinks {
    private KeptLinks() {}

    /**
     * One link and what became of it.
     *
     * @param foundIn the recording whose chain goes through it
     * @param isGiven whether a recording of the name under which it was noted is among those looked at
     */
    record Held(NotedLink noted, Optional<Path> foundIn, boolean isGiven) {
        /** The recording is there and its chain does not go through the link. */
        boolean isContradicted() {
            return isGiven && foundIn.isEmpty();
        }

        String sentence() {
            return "link of " + noted.at() + ", " + noted.file() + ": "
                    + foundIn.map(file -> "the chain of " + file + " goes through it")
                            .orElse(
                                    isGiven
                                            ? "NOT IN ITS CHAIN: the recording was changed since, or is a copy from before"
                                            : "not looked at, that recording was not given");
        }
    }

    /** The links that stand in a text, a line each. */
    static List<NotedLink> read(Path file) throws IOException, UsageException {
        List<NotedLink> links = Files.readAllLines(file, StandardCharsets.ISO_8859_1).stream()
                .flatMap(line -> NotedLink.in(line).stream())
                .toList();
        if (links.isEmpty()) {
            throw new UsageException(file + ": no link stands in it.\n  Name the last-links.txt of a drive.");
        }
        return links;
    }

    /** A recording may have got another name since its link was noted: all are asked. */
    static List<Held> hold(List<NotedLink> links, List<Path> recordings) {
        List<Held> held = new ArrayList<>();
        for (NotedLink link : links) {
            Optional<Path> found = recordings.stream()
                    .filter(file -> goesThrough(file, link.link()))
                    .findFirst();
            boolean isGiven = recordings.stream()
                    .anyMatch(file -> file.getFileName().toString().equals(link.file()));
            held.add(new Held(link, found, isGiven));
        }
        return held;
    }

    private static boolean goesThrough(Path file, String link) {
        try (Recording recording = Recording.open(file)) {
            return recording.goesThrough(link);
        } catch (RecordingException unreadable) {
            return false; // said where the recording itself is checked
        }
    }
}
