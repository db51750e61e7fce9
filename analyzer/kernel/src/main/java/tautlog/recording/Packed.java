package tautlog.recording;

/**
 * What packing made of a recording; {@code bytesAfter} is {@code bytesBefore} when it stayed as it was, packed already.
 *
 * @param samples that it holds
 */
public record Packed(long samples, long bytesBefore, long bytesAfter) {
    public boolean isReplaced() {
        return bytesAfter < bytesBefore;
    }
}
