package fettle.document;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Words values and choices for messages. */
final class Words {
    private static final int LONGEST_EXCERPT = 60;

    private Words() {}

    /** A name or text between double quotes, shortened, with control characters made visible. */
    static String quoted(String text) {
        return '"' + shortened(text) + '"';
    }

    /** One character between single quotes, or its code where it cannot be seen. */
    static String quotedCharacter(int codePoint) {
        return "'" + shortened(Character.toString(codePoint)) + "'";
    }

    /** At most the first 60 characters, on one line. */
    static String shortened(String text) {
        StringBuilder shown = new StringBuilder();
        int[] codePoints = text.codePoints().limit(LONGEST_EXCERPT + 1L).toArray();
        for (int i = 0; i < Math.min(codePoints.length, LONGEST_EXCERPT); i++) {
            int point = codePoints[i];
            if (Character.isISOControl(point) || Character.getType(point) == Character.SURROGATE) {
                shown.append(String.format("\\u%04x", point));
            } else {
                shown.appendCodePoint(point);
            }
        }
        return codePoints.length > LONGEST_EXCERPT ? shown + "…" : shown.toString();
    }

    /** {@code a}, {@code a or b}, {@code a, b or c}. */
    static String anyOf(List<String> choices) {
        int last = choices.size() - 1;
        return last < 1 ? String.join("", choices)
                : String.join(", ", choices.subList(0, last)) + " or " + choices.get(last);
    }

    /** Names the first character that is likely to be taken for another: one beyond ASCII in a text that is not all of such. Nothing where there is none. */
    private static String stranger(String text) {
        boolean plain = text.chars().anyMatch(each -> each < 128 && Character.isLetterOrDigit(each));
        return text.codePoints().filter(each -> plain && each > 127).mapToObj(each -> String.format(Locale.ROOT, " with the character U+%04X", each)
                + Optional.ofNullable(Character.getName(each)).map(name -> " (" + name.toLowerCase(Locale.ROOT) + ")").orElse("")).findFirst().orElse("");
    }

    /** What a value is, in words that follow "found". */
    static String describe(Node node) {
        if (node instanceof Node.Text text) {
            return text.value().isEmpty() ? "an empty text" : text.value().isBlank() ? "nothing but blanks" : "the text " + quoted(text.value()) + stranger(text.value());
        } else if (node instanceof Node.Num number) {
            return "the number " + shortened(number.value().toString());
        } else if (node instanceof Node.Bool bool) {
            return String.valueOf(bool.value());
        } else if (node instanceof Node.Arr list) {
            return list.items().isEmpty() ? "an empty list"
                    : "a list of " + (list.items().size() == 1 ? "one" : String.valueOf(list.items().size()));
        } else if (node instanceof Node.Obj) {
            return "an object";
        }
        return "null";
    }
}
