package fettle.view;

import java.io.OutputStream;
import java.util.function.Consumer;
import tools.jackson.core.JsonEncoding;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.SerializableString;
import tools.jackson.core.StreamWriteConstraints;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.io.CharacterEscapes;
import tools.jackson.core.io.SerializedString;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;

/**
 * Writes JSON as a stream: UTF-8, indented, lines ended by a line feed on every system. Characters that would act on a terminal are
 * written as escapes, which read back as the same text.
 */
final class PlainJson {

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .characterEscapes(new Escapes())
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            // A build is as deep as its parts stand on one another.
            .streamWriteConstraints(StreamWriteConstraints.builder().maxNestingDepth(Integer.MAX_VALUE).build())
            .build();

    private PlainJson() {}

    /** Writes one object and a line feed behind it, and leaves the stream open. */
    static void object(OutputStream out, Consumer<JsonGenerator> members) {
        try (JsonGenerator json = FACTORY.createGenerator(new Indented(), out, JsonEncoding.UTF8)) {
            json.writeStartObject();
            members.accept(json);
            json.writeEndObject();
            json.writeRaw('\n');
        }
    }

    private static final class Indented extends ObjectWriteContext.Base {
        private final PrettyPrinter printer = new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));

        @Override
        public PrettyPrinter getPrettyPrinter() {
            return printer;
        }

        @Override
        public boolean hasPrettyPrinter() {
            return true;
        }
    }

    private static final class Escapes extends CharacterEscapes {
        private static final long serialVersionUID = 1L;
        private static final int DELETE = 0x7F;

        @Override
        public int[] getEscapeCodesForAscii() {
            int[] codes = CharacterEscapes.standardAsciiEscapesForJSON();
            codes[DELETE] = CharacterEscapes.ESCAPE_STANDARD;
            return codes;
        }

        @Override
        public SerializableString getEscapeSequence(int c) {
            boolean half = Character.isSurrogate((char) c);
            return half || SafeText.harmless(c) ? null : new SerializedString(String.format("\\u%04x", c));
        }
    }
}
