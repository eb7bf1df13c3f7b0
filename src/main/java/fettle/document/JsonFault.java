package fettle.document;

import java.util.Optional;

/** Words a slip in JSON for people who write it by hand. */
record JsonFault(String what, String remedy) {
    static final JsonFault ENDS_EARLY = new JsonFault("the document ends before everything in it is closed",
            "add the missing \", ] or } at the end, or restore the part that was cut off");

    private static final String FIGURES = "-0123456789";

    /**
     * The slip at an offset. The parser tells only in words what it expected, so its words are looked at where the text
     * alone does not show the slip.
     */
    static JsonFault at(String text, int offset, String parserSays) {
        String found = offset < text.length() ? Words.quotedCharacter(text.codePointAt(offset)) : "the end";
        char first = offset < text.length() ? text.charAt(offset) : ' ';
        char before = lastVisibleBefore(text, offset);
        if (first == '#' || first == '/') {
            return new JsonFault("JSON has no comments, but one begins here", "put the remark into a note, or keep the document as YAML");
        } else if (first == '\'') {
            return new JsonFault("a single quote stands here", "put names and texts between double quotes");
        } else if (before == ',' && (first == '}' || first == ']')) {
            return new JsonFault("a comma stands before " + found, "delete that comma");
        } else if (parserSays.contains("Illegal unquoted")) {
            return new JsonFault("a text holds a line break or another control character",
                    "close the text with a double quote on its line, or write the line break as \\n");
        } else if (parserSays.contains("surrogate")) {
            return new JsonFault("a name holds half of a character, written as \\u", "write both halves, or the character itself");
        } else if (parserSays.contains("escape")) {
            return new JsonFault("a text holds a backslash before " + found + ", which means nothing", "write a backslash itself as \\\\");
        } else if (parserSays.contains("comma to separate")) {
            return new JsonFault("a comma is missing before " + found, "put a comma between the two entries");
        } else if (parserSays.contains("a colon")) {
            return new JsonFault("a colon is missing before " + found, "put a colon between a name and its value");
        } else if (parserSays.contains("start property name") && cutByComma(text, offset).isPresent()) {
            CommaNumber number = cutByComma(text, offset).get();
            return new JsonFault("a number may have no comma, as " + number.written() + " has", "write " + number.readings());
        } else if (parserSays.contains("start property name")) {
            return new JsonFault("found " + found + " where the name of a property is expected", "put names between double quotes");
        } else if (parserSays.contains("numeric value") || parserSays.contains("NaN") || first == '.' || first == '+') {
            return new JsonFault("this is not a JSON number", "write a number such as -1.5: digits on both sides of the point, no leading zero, no plus sign");
        } else if (parserSays.contains("close marker")) {
            return new JsonFault(found + " closes nothing that is open here", "delete it, or look above for a bracket that is missing or of the wrong shape");
        } else if (parserSays.contains("valid value") || parserSays.contains("was expecting (JSON")) {
            return new JsonFault("found " + found + " where a value is expected",
                    "write a text between double quotes, a number, true, false, an object or a list");
        }
        return new JsonFault("this is not JSON: " + found + " cannot stand here", "correct the line, or delete it");
    }

    /** The number of which a comma has cut off what stands at an offset. */
    private static Optional<CommaNumber> cutByComma(String text, int offset) {
        int begin = offset - 1;
        while (begin > 0 && FIGURES.indexOf(text.charAt(begin - 1)) >= 0) {
            begin--;
        }
        boolean value = begin > 0 && text.charAt(offset - 1) == ',' && lastVisibleBefore(text, begin) == ':';
        return value ? CommaNumber.at(text, begin) : Optional.empty();
    }

    private static char lastVisibleBefore(String text, int offset) {
        for (int i = offset - 1; i >= 0; i--) {
            if (!Character.isWhitespace(text.charAt(i))) {
                return text.charAt(i);
            }
        }
        return ' ';
    }
}
