package fettle.view;

/**
 * Makes text from documents harmless on a terminal: what could move the cursor, change colours, break the line or turn the reading
 * direction is shown as an escape instead of being sent.
 */
final class SafeText {

    private static final int ZERO_WIDTH_NON_JOINER = 0x200C;
    private static final int ZERO_WIDTH_JOINER = 0x200D;

    private SafeText() {}

    /** The text on one line: each run of line breaks and tabs is a space, and each other character that is not for reading is {@code \}{@code u....}. */
    static String of(String text) {
        if (text.chars().allMatch(c -> c >= ' ' && c < 0x7F)) {
            return text;
        }
        StringBuilder safe = new StringBuilder();
        boolean afterBreak = false;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            boolean breaks = c == '\n' || c == '\r' || c == '\t';
            if (breaks && !afterBreak) {
                safe.append(' ');
            } else if (!breaks && harmless(c)) {
                safe.appendCodePoint(c);
            } else if (!breaks) {
                safe.append(escape(c));
            }
            afterBreak = breaks;
        }
        return safe.toString();
    }

    /** Whether a character only shows itself. The two joiners do no more than shape the letters beside them, which some scripts need. */
    static boolean harmless(int c) {
        if (c == ZERO_WIDTH_JOINER || c == ZERO_WIDTH_NON_JOINER) {
            return true;
        }
        return switch (Character.getType(c)) {
            case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }

    private static String escape(int c) {
        return c < 0x10000 ? String.format("\\u%04X", c) : String.format("\\u{%X}", c);
    }
}
