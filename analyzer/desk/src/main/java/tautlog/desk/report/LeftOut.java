package tautlog.desk.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * What was asked for and could not be read: no figure counts it, and what happened in it is not known.
 *
 * @param recordings files that cannot be opened
 * @param outings outings of recordings that can
 * @param blocks pieces of outings that can; what they held is a gap
 */
public record LeftOut(List<OfRecording> recordings, List<OfOuting> outings, List<OfBlock> blocks) {
    public LeftOut(List<OfRecording> recordings, List<OfOuting> outings) {
        this(recordings, outings, List.of());
    }

    public LeftOut {
        blocks = List.copyOf(blocks);
        recordings = List.copyOf(recordings);
        outings = List.copyOf(outings);
    }

    /** A file that cannot be opened, and why. */
    public record OfRecording(String file, String reason) {}

    /**
     * An outing that cannot be read, and why.
     *
     * @param outing from 1, as counted in the file
     * @param reason goes on after "because": a clause, perhaps sentences behind it, in one line, without the last full stop
     * @param samples how many the file says it holds; empty when that cannot be told
     */
    public record OfOuting(String file, int outing, String reason, OptionalLong samples) {}

    /**
     * A piece of an outing that cannot be read.
     *
     * @param what which, when, and what is wrong with it
     */
    public record OfBlock(String file, String what) {}

    /** The same, and these blocks. */
    public LeftOut with(List<OfBlock> damaged) {
        List<OfBlock> all = new ArrayList<>(blocks);
        all.addAll(damaged);
        return new LeftOut(recordings, outings, all);
    }

    public boolean isNothing() {
        return recordings.isEmpty() && outings.isEmpty() && blocks.isEmpty();
    }

    /** One sentence each, the file's name without its folder. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        for (OfRecording recording : recordings) {
            sentences.add(name(recording.file()) + ", because it cannot be read: " + recording.reason());
        }
        for (OfOuting outing : outings) {
            sentences.add("outing " + outing.outing() + " of " + name(outing.file()) + " (" + extent(outing.samples())
                    + "), because " + outing.reason() + ".");
        }
        return sentences;
    }

    /** A sentence for each of {@link #blocks}. */
    public List<String> damage() {
        return blocks.stream()
                .map(block -> name(block.file()) + ", " + block.what()
                        + ". What it held is not known and in no figure; copy the recording again from the board if it is"
                        + " still there, and run tautlog verify.")
                .toList();
    }

    private static String extent(OptionalLong samples) {
        return samples.isPresent() ? "about " + samples.getAsLong() + " samples" : "nobody knows how many samples";
    }

    private static String name(String file) {
        return String.valueOf(java.nio.file.Path.of(file).getFileName());
    }

    /** The keys of what was left out, into the object that is open. */
    public void write(JsonFields json) throws IOException {
        json.list("recordings_left_out", recordings, recording -> {
            json.text("file", recording.file());
            json.text("reason", recording.reason());
        });
        json.list("outings_left_out", outings, outing -> {
            json.text("file", outing.file());
            json.whole("outing", outing.outing());
            json.text("reason", outing.reason());
            json.whole("samples", outing.samples());
        });
        json.list("damaged_blocks", blocks, block -> {
            json.text("file", block.file());
            json.text("what", block.what());
        });
    }
}
