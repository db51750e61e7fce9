package tautlog.recording;

import java.util.List;

/**
 * What a recording is worth as evidence.
 *
 * @param outings all whose first row can be read
 * @param lost those whose first row cannot be read, or of which the file says that rows are missing
 * @param blocks how many rows of evidence were checked
 * @param samples how many of them are intact
 * @param thinned outings whose readings were taken out, and which say so
 * @param damages everything that is not what was written; empty when all is well
 * @param gaps jumps in the sample numbers
 * @param lastLink the link that the chain ends with, 64 hexadecimal characters: compare it with one kept elsewhere, since who can
 *     rewrite the file can rewrite the chain
 */
public record Verification(
        String winch,
        List<Outing> outings,
        List<LostOuting> lost,
        long blocks,
        long samples,
        List<Thinned> thinned,
        List<Damage> damages,
        List<Gap> gaps,
        String lastLink) {
    public Verification {
        outings = List.copyOf(outings);
        lost = List.copyOf(lost);
        thinned = List.copyOf(thinned);
        damages = List.copyOf(damages);
        gaps = List.copyOf(gaps);
    }

    /** True when nothing is damaged or lost: checksums, chain and structure all fit. What was thinned is not damaged. */
    public boolean isIntact() {
        return damages.isEmpty() && lost.isEmpty();
    }

    /**
     * An outing that was thinned: header, SHA-256 and link of its blocks of samples are left, and fit the chain.
     *
     * @param blocks how many
     * @param samples that were in them
     * @param time UTC at which they were thinned, ISO 8601, or {@code time unknown}
     */
    public record Thinned(int outing, long blocks, long samples, String time) {}

    /**
     * Sample numbers that are missing.
     *
     * @param afterNumber the last sample before it
     * @param missing how many numbers, 1 or more
     * @param time UTC of the first frame after it, ISO 8601, or {@code time unknown}
     */
    public record Gap(int outing, long afterNumber, long missing, String time) {}
}
