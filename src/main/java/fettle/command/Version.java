package fettle.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The program's version, as the build wrote it down. */
final class Version {

    private static final String RESOURCE = "/fettle/version.txt";

    private Version() {}

    static String text() {
        try (InputStream in = Version.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw new IllegalStateException("the program was packaged without " + RESOURCE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
