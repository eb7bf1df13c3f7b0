package fettle.document;

/** Turns offsets in a text into lines and columns. Offsets asked for in rising order cost one pass over the text in all. */
final class PlaceFinder {
    /** A line and a column, both counted from 1; a column is one code point wide. */
    record Place(int line, int column) {}

    private final CharSequence text;
    private int offset;
    private int line = 1;
    private int column = 1;

    PlaceFinder(CharSequence text) {
        this.text = text;
    }

    /** The place of the character at an offset; the place behind the last one where the offset lies beyond the end. */
    Place at(int wanted) {
        if (wanted < offset) {
            offset = 0;
            line = 1;
            column = 1;
        }
        int end = Math.min(wanted, text.length());
        while (offset < end) {
            step();
        }
        return new Place(line, column);
    }

    private void step() {
        char passed = text.charAt(offset);
        boolean secondOfLineBreak = passed == '\n' && offset > 0 && text.charAt(offset - 1) == '\r';
        boolean secondOfPair = Character.isLowSurrogate(passed) && offset > 0
                && Character.isHighSurrogate(text.charAt(offset - 1));
        offset++;
        if (passed == '\r' || passed == '\n' && !secondOfLineBreak) {
            line++;
            column = 1;
        } else if (!secondOfLineBreak && !secondOfPair) {
            column++;
        }
    }
}
