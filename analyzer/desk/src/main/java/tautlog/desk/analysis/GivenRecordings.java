package tautlog.desk.analysis;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;

/** Turns what stands on the command line into recordings: files as they are, folders as the recordings in them. */
public final class GivenRecordings {
    private GivenRecordings() {}

    /**
     * Every recording once, folders sorted by name.
     *
     * @throws RecordingException if something is not there, or a folder holds no recording
     */
    public static List<Path> in(List<Path> filesAndFolders) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path path : filesAndFolders) {
            if (Files.isDirectory(path)) {
                files.addAll(inFolder(path));
            } else if (Files.exists(path)) {
                files.add(path);
            } else {
                throw new RecordingException(
                        path + ": there is no such file or folder.\n  Give recordings (files that end in "
                                + RecordingName.ENDING + ") or folders of them.");
            }
        }
        return files.stream().distinct().toList();
    }

    private static List<Path> inFolder(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            List<Path> found = all.filter(file -> file.getFileName().toString().endsWith(RecordingName.ENDING))
                    .sorted()
                    .toList();
            if (found.isEmpty()) {
                throw new RecordingException(
                        folder + ": the folder holds no recording.\n  Recordings end in " + RecordingName.ENDING + ".");
            }
            return found;
        }
    }
}
