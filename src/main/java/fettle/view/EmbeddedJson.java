package fettle.view;

import java.io.OutputStream;
import java.util.function.Consumer;
import tools.jackson.core.JsonEncoding;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.SerializableString;
import tools.jackson.core.StreamWriteConstraints;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.io.CharacterEscapes;
import tools.jackson.core.json.JsonFactory;

/**
 * Writes JSON that can stand inside an HTML page: no text in it can end the element around it or open a comment, since it holds no
 * angle bracket and no ampersand but as an escape.
 */
final class EmbeddedJson {

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .characterEscapes(new Escapes())
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            // A build is as deep as its parts stand on one another.
            .streamWriteConstraints(StreamWriteConstraints.builder().maxNestingDepth(Integer.MAX_VALUE).build())
            .build();

    private EmbeddedJson() {}

    /** Writes one object, and leaves the stream open. */
    static void object(OutputStream out, Consumer<JsonGenerator> members) {
        try (JsonGenerator json = FACTORY.createGenerator(ObjectWriteContext.empty(), out, JsonEncoding.UTF8)) {
            json.writeStartObject();
            members.accept(json);
            json.writeEndObject();
        }
    }

    private static final class Escapes extends CharacterEscapes {
        private static final long serialVersionUID = 1L;

        @Override
        public int[] getEscapeCodesForAscii() {
            int[] codes = CharacterEscapes.standardAsciiEscapesForJSON();
            codes['<'] = CharacterEscapes.ESCAPE_STANDARD;
            codes['>'] = CharacterEscapes.ESCAPE_STANDARD;
            codes['&'] = CharacterEscapes.ESCAPE_STANDARD;
            return codes;
        }

        @Override
        public SerializableString getEscapeSequence(int c) {
            return null;
        }
    }
}
