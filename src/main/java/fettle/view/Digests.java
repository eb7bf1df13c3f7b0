package fettle.view;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Short names for texts. */
final class Digests {

    private static final int BYTES = 16;

    private Digests() {}

    /** The first bytes of the text's SHA-256, in hexadecimal. */
    static String of(String text) {
        try {
            byte[] whole = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(whole, 0, BYTES);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256", impossible);
        }
    }
}
