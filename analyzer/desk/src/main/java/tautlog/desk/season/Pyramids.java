package tautlog.desk.season;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import tautlog.desk.pyramid.OutingPyramid;
import tautlog.desk.pyramid.PyramidStore;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;

/** The pyramids of all outings; one thread brings them up to date, others look. */
final class Pyramids {
    private final Optional<Path> folder;
    private final Map<String, OutingPyramid> byOuting = new ConcurrentHashMap<>();
    private final Map<String, Boolean> looked = new ConcurrentHashMap<>();

    Pyramids(Optional<Path> folder) {
        this.folder = folder;
    }

    Optional<OutingPyramid> of(KnownOuting outing) {
        return Optional.ofNullable(byOuting.get(outing.id()));
    }

    boolean isCurrent(KnownOuting outing) {
        return of(outing)
                .map(pyramid -> pyramid.samples() == outing.outing().samples())
                .orElse(false);
    }

    /** Brings the outings of one recording up to date and keeps those that are closed. */
    void follow(List<KnownOuting> ofOneRecording) throws RecordingException {
        KnownOuting first = ofOneRecording.get(0);
        try (Recording recording = Recording.open(first.file())) {
            boolean isFirstLook = looked.put(first.recordingId(), true) == null;
            if (isFirstLook && folder.isPresent()) {
                PyramidStore.read(folder.get(), recording)
                        .forEach((index, pyramid) -> byOuting.put(first.recordingId() + "." + index, pyramid));
            }
            boolean isNew = false;
            for (KnownOuting outing : ofOneRecording) {
                if (!isCurrent(outing)) {
                    OutingPyramid pyramid = byOuting.getOrDefault(outing.id(), OutingPyramid.of(outing.outing()));
                    pyramid.follow(recording, outing.outing());
                    byOuting.put(outing.id(), pyramid);
                    isNew |= outing.outing().closed();
                }
            }
            if (isNew) {
                keep(recording, ofOneRecording);
            }
        }
    }

    private void keep(Recording recording, List<KnownOuting> outings) {
        Map<Integer, OutingPyramid> closed = new TreeMap<>();
        for (KnownOuting one : outings) {
            OutingPyramid pyramid = byOuting.get(one.id());
            if (pyramid != null && one.outing().closed() && !one.outing().thinned()) {
                closed.put(one.outing().index(), pyramid);
            }
        }
        try {
            if (folder.isPresent()) {
                PyramidStore.write(folder.get(), recording, closed);
            }
        } catch (IOException full) {
            return; // they stay in memory and are made anew the next time
        }
    }
}
