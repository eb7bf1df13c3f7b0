package fettle.editor;

import fettle.document.Node;
import fettle.document.Origin;
import fettle.document.Places;
import java.util.Optional;

/** How far what begins at a place goes on, in the text of a document: documents know only where their values begin. */
final class Extents {

    /** A stretch of text from one offset up to another. */
    record Stretch(int from, int to) {

        boolean holds(int offset) {
            return from <= offset && offset <= to;
        }
    }

    private Extents() {}

    /** A name or plain value, without its quotes. */
    static Stretch inner(Lines lines, Origin origin) {
        Stretch whole = token(lines, origin);
        String text = lines.text();
        boolean quoted = whole.to() > whole.from() + 1 && "\"'".indexOf(text.charAt(whole.from())) >= 0 && text.charAt(whole.to() - 1) == text.charAt(whole.from());
        return quoted ? new Stretch(whole.from() + 1, whole.to() - 1) : whole;
    }

    /** What a finding at this place is about: an entry's first line, or one name or value. */
    static Stretch marked(Lines lines, Origin origin, Optional<Node> root) {
        Optional<Node> value = root.flatMap(found -> Places.at(found, origin.pointer()));
        boolean nested = value.map(node -> (node instanceof Node.Obj || node instanceof Node.Arr) && node.origin().equals(origin)).orElse(false);
        if (!nested) {
            return token(lines, origin);
        }
        int from = lines.offset(origin);
        String rest = lines.line(origin.line() - 1);
        int start = lines.position(from).getCharacter();
        return new Stretch(from, from + Math.max(1, cut(rest.substring(Math.min(start, rest.length())), " #").stripTrailing().length()));
    }

    private static Stretch token(Lines lines, Origin origin) {
        int from = lines.offset(origin);
        String line = lines.line(origin.line() - 1);
        int start = lines.position(from).getCharacter();
        String rest = line.substring(Math.min(start, line.length()));
        if (rest.isEmpty()) {
            return new Stretch(from, from);
        }
        char first = rest.charAt(0);
        return new Stretch(from, from + (first == '"' || first == '\'' ? quoted(rest, first) : plain(rest)));
    }

    private static int quoted(String rest, char quote) {
        for (int i = 1; i < rest.length(); i++) {
            char at = rest.charAt(i);
            if (at == '\\' && quote == '"') {
                i++;
            } else if (at == quote) {
                if (quote == '\'' && i + 1 < rest.length() && rest.charAt(i + 1) == quote) {
                    i++;
                } else {
                    return i + 1;
                }
            }
        }
        return rest.length();
    }

    /** Up to what ends a plain value or name; a comma or bracket may belong to a text, but never to an id. */
    private static int plain(String rest) {
        String left = cut(cut(rest, " #"), ": ");
        if (left.endsWith(":")) {
            left = left.substring(0, left.length() - 1);
        }
        for (String end : new String[] {",", "]", "}"}) {
            left = cut(left, end);
        }
        return Math.max(1, left.stripTrailing().length());
    }

    private static String cut(String text, String end) {
        int at = text.indexOf(end);
        return at < 0 ? text : text.substring(0, at);
    }
}
