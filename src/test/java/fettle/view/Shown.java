package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Whole outputs kept as text files, to be reviewed like code. */
public final class Shown {

    /** Where the expected outputs and the small catalogs lie. */
    public static final Path FOLDER = Path.of("src/test/resources/fettle/view");

    private Shown() {}

    /**
     * Compares an output with the file of that name. With {@code -Dfettle.rewrite=true} the file is written instead and the test fails, so that the
     * change is looked at before it is kept.
     */
    public static void equalsFile(String name, String shown) {
        Path file = FOLDER.resolve(name);
        try {
            String expected = Files.exists(file) ? Files.readString(file, StandardCharsets.UTF_8) : "";
            if (Boolean.getBoolean("fettle.rewrite") && !expected.equals(shown)) {
                Files.writeString(file, shown, StandardCharsets.UTF_8);
            }
            assertEquals(expected, shown, "what is shown differs from " + file);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
