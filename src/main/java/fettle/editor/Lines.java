package fettle.editor;

import fettle.document.Origin;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;

/** A text whose places can be named as documents name them (lines and characters from 1) and as editors do (lines and UTF-16 units from 0). */
final class Lines {

    private final String text;
    private final int[] starts;
    private final int count;

    Lines(String text) {
        this.text = text;
        int[] found = new int[16];
        int lines = 1;
        for (int i = 0; i < text.length(); i++) {
            char passed = text.charAt(i);
            if (passed == '\n' || passed == '\r' && !(i + 1 < text.length() && text.charAt(i + 1) == '\n')) {
                if (lines == found.length) {
                    found = java.util.Arrays.copyOf(found, lines * 2);
                }
                found[lines++] = i + 1;
            }
        }
        this.starts = found;
        this.count = lines;
    }

    String text() {
        return text;
    }

    /** A line without its end, counted from 0; empty where there is none. */
    String line(int line) {
        return line < 0 || line >= count ? "" : text.substring(starts[line], end(line));
    }

    private int end(int line) {
        int end = line + 1 < count ? starts[line + 1] : text.length();
        while (end > starts[line] && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
            end--;
        }
        return end;
    }

    /** How far into the text a position lies; one outside of it is taken for the nearest inside. */
    int offset(Position position) {
        if (position.getLine() < 0) {
            return 0;
        } else if (position.getLine() >= count) {
            return text.length();
        }
        int line = position.getLine();
        return Math.min(starts[line] + Math.max(0, position.getCharacter()), end(line));
    }

    Position position(int offset) {
        int within = Math.max(0, Math.min(offset, text.length()));
        int found = java.util.Arrays.binarySearch(starts, 0, count, within);
        int line = found >= 0 ? found : -found - 2;
        return new Position(line, within - starts[line]);
    }

    Position position(Origin origin) {
        return position(offset(origin));
    }

    /** Where something stands in this text; its end where the text is shorter. */
    int offset(Origin origin) {
        if (origin.line() > count) {
            return text.length();
        }
        int start = starts[origin.line() - 1];
        int end = end(origin.line() - 1);
        int at = start;
        for (int column = 1; column < origin.column() && at < end; column++) {
            at += Character.charCount(text.codePointAt(at));
        }
        return Math.min(at, end);
    }

    Range range(int from, int to) {
        return new Range(position(from), position(to));
    }

    /** The text with a range put otherwise. */
    String with(Range range, String put) {
        int from = offset(range.getStart());
        int to = Math.max(from, offset(range.getEnd()));
        return text.substring(0, from) + put + text.substring(to);
    }
}
