package fettle.document;

import fettle.document.PlaceFinder.Place;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** Turns the bytes of a document into text, or says why that is impossible. */
sealed interface FileText {
    /** The text, without a byte order mark. */
    record Readable(String text) implements FileText {}

    /** What is wrong with the bytes, where, and what to do. */
    record Refused(Place place, String what, String remedy) implements FileText {}

    static FileText of(byte[] bytes) {
        if (begins(bytes, 0xEF, 0xBB, 0xBF)) {
            return decoded(ByteBuffer.wrap(bytes, 3, bytes.length - 3));
        } else if (begins(bytes, 0xFF, 0xFE, 0, 0) || begins(bytes, 0, 0, 0xFE, 0xFF)) {
            return otherEncoding("UTF-32");
        } else if (begins(bytes, 0xFF, 0xFE) || begins(bytes, 0xFE, 0xFF) || everyOtherIsZero(bytes)) {
            return otherEncoding("UTF-16");
        }
        return decoded(ByteBuffer.wrap(bytes));
    }

    private static boolean begins(byte[] bytes, int... mark) {
        if (bytes.length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if ((bytes[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    /** The first two characters of JSON and YAML are ASCII, which UTF-16 without a mark shows as zeros at every other place. */
    private static boolean everyOtherIsZero(byte[] bytes) {
        return bytes.length >= 4
                && (bytes[0] == 0 && bytes[1] != 0 && bytes[2] == 0 && bytes[3] != 0
                        || bytes[0] != 0 && bytes[1] == 0 && bytes[2] != 0 && bytes[3] == 0);
    }

    private static Refused otherEncoding(String name) {
        return new Refused(new Place(1, 1), "the document is in " + name + ", not in UTF-8", "save it as UTF-8");
    }

    private static FileText decoded(ByteBuffer bytes) {
        CharBuffer text = CharBuffer.allocate(bytes.remaining() + 1);
        CoderResult result = StandardCharsets.UTF_8.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(bytes, text, true);
        text.flip();
        if (result.isError()) {
            return new Refused(placeAfter(text), "the document is not in UTF-8: the byte "
                    + String.format("0x%02X", bytes.get(bytes.position())) + " is no character here", "save it as UTF-8");
        }
        String readable = text.toString();
        int zero = readable.indexOf('\0');
        if (zero >= 0) {
            return new Refused(new PlaceFinder(readable).at(zero), "the document holds a zero byte, as no text does",
                    "put a JSON or YAML text here");
        }
        return new Readable(readable);
    }

    private static Place placeAfter(CharSequence text) {
        return new PlaceFinder(text).at(text.length());
    }
}
