package tautlog.desk.season;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of texts, to tell whether something is still the same. */
final class Fingerprint {
    private Fingerprint() {}

    /** 64 hexadecimal characters; where one text ends matters. */
    static String of(String... texts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String text : texts) {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                digest.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
                digest.update(bytes);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
