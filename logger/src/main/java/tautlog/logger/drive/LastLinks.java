package tautlog.logger.drive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import tautlog.recording.NotedLink;

/** The text file on the drive with a link for each recording, day by day. Lines are only ever added. */
final class LastLinks {
    static final String NAME = "last-links.txt";

    private static final String REMARKS = """
            # Links of the recordings' chains: when noted (UTC, by the logger's clock), recording, link.
            # Who can rewrite a recording can rewrite its chain, but not a link that was kept elsewhere: keep this file,
            # or a print of it, where nobody can change it. To hold recordings against it:
            #   tautlog verify --against last-links.txt RECORDINGS
            """;

    private final Path file;

    LastLinks(Path folder) {
        file = folder.resolve(NAME);
    }

    /** Adds those that do not stand there yet, whenever they were noted; what is there stays as it is. */
    void add(List<NotedLink> noted) throws IOException {
        String there = Files.exists(file) ? Files.readString(file, StandardCharsets.ISO_8859_1) : "";
        List<NotedLink> known = new ArrayList<>();
        there.lines().forEach(line -> NotedLink.in(line).ifPresent(known::add));
        StringBuilder more = new StringBuilder(there.isEmpty() ? REMARKS : there.endsWith("\n") ? "" : "\n");
        boolean nothingNew = true;
        for (NotedLink link : noted) {
            if (known.stream()
                    .noneMatch(
                            old -> old.file().equals(link.file()) && old.link().equals(link.link()))) {
                more.append(link.line()).append('\n');
                nothingNew = false;
            }
        }
        if (!nothingNew) {
            append(StandardCharsets.UTF_8.encode(more.toString()));
        }
    }

    private void append(ByteBuffer text) throws IOException {
        try (FileChannel channel = FileChannel.open(
                file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
            while (text.hasRemaining()) {
                channel.write(text);
            }
            channel.force(true);
        }
    }
}
