package fettle.document;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.StringJoiner;

/** Reads texts for tests, and writes trees out so that a test can compare them whole. */
final class Trees {
    private Trees() {}

    static Document read(String file, String text) {
        return Documents.content(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /** The tree with the line and column of each value and name, as in {@code {a@1:2=3@1:6}@1:1}. */
    static String placed(Node node) {
        String at = "@" + node.origin().line() + ":" + node.origin().column();
        return written(node, true) + at;
    }

    /** The tree without places. */
    static String bare(Node node) {
        return written(node, false);
    }

    private static String written(Node node, boolean withPlaces) {
        if (node instanceof Node.Obj object) {
            StringJoiner members = new StringJoiner(" ", "{", "}");
            object.members().forEach((name, member) -> members.add(withPlaces
                    ? name + "@" + member.key().line() + ":" + member.key().column() + "=" + placed(member.value())
                    : name + "=" + bare(member.value())));
            return members.toString();
        } else if (node instanceof Node.Arr list) {
            StringJoiner items = new StringJoiner(" ", "[", "]");
            list.items().forEach(item -> items.add(withPlaces ? placed(item) : bare(item)));
            return items.toString();
        } else if (node instanceof Node.Text text) {
            return "'" + text.value() + "'";
        } else if (node instanceof Node.Num number) {
            return number.value().toString();
        } else if (node instanceof Node.Bool bool) {
            return String.valueOf(bool.value());
        }
        return "null";
    }

    /** Each problem as {@code line:column pointer: what}. */
    static List<String> told(Document document) {
        return document.problems().stream().map(problem -> problem.origin().line() + ":" + problem.origin().column() + " "
                + problem.origin().pointer() + ": " + problem.what()).toList();
    }
}
