package fettle.editor;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * A document as an editor holds it, saved or not.
 *
 * @param file its place on disk
 * @param uri as the editor writes it
 */
record OpenText(Path file, String uri, int version, Lines lines) {

    byte[] bytes() {
        return lines.text().getBytes(StandardCharsets.UTF_8);
    }

    OpenText with(String text, int newer) {
        return new OpenText(file, uri, newer, new Lines(text));
    }
}
