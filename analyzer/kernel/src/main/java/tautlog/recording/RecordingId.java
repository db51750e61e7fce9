package tautlog.recording;

import java.security.SecureRandom;
import java.util.HexFormat;

/**
 * What a recording is called for ever, whatever its file is called: 16 hexadecimal characters, {@code 0} to {@code f}. Files are
 * renamed when their day becomes known; what was published of them names the id.
 */
public final class RecordingId {
    private static final SecureRandom RANDOM = new SecureRandom();

    private RecordingId() {}

    /** One that no other recording has. */
    public static String random() {
        return of(RANDOM.nextLong());
    }

    /** One that follows from the content, for a recording that is made the same each time. */
    public static String of(long fingerprint) {
        return HexFormat.of().toHexDigits(fingerprint);
    }
}
