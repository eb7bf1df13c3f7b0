package fettle.editor;

import fettle.document.Document;
import fettle.document.Documents;
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

    /** The document that it reads as. */
    Document read() {
        return read(file, lines.text());
    }

    /** The document that a text would read as in the place of a file. */
    static Document read(Path file, String text) {
        return Documents.content(Session.shown(file), text.getBytes(StandardCharsets.UTF_8));
    }

    OpenText with(String text, int newer) {
        return new OpenText(file, uri, newer, new Lines(text));
    }
}
