package fettle.editor;

import fettle.document.Document;
import fettle.document.Node;
import fettle.document.Origin;
import fettle.document.Places;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.lsp4j.TextEdit;

/**
 * A text that a document holds as a value or as a name, letter by letter as it is read, so that another can be written in its place.
 *
 * @param value as it is read
 * @param stretch where it stands, without its quotes
 * @param name whether it is the name of a property
 */
record Written(Path file, Lines lines, String pointer, String value, Extents.Stretch stretch, boolean name) {

    /** What stands at a place; empty where that is no text, or one that is written otherwise than it reads. */
    static Optional<Written> at(Path file, Lines lines, Origin place) {
        Optional<Node> root = OpenText.read(file, lines.text()).root();
        Extents.Stretch stretch = Extents.inner(lines, place);
        String source = lines.text().substring(stretch.from(), stretch.to());
        boolean name = root.flatMap(found -> named(found, place.pointer())).filter(member -> sameSpot(member.key(), place)).isPresent();
        Optional<String> value = name ? Optional.of(last(place.pointer()))
                : root.flatMap(found -> Places.at(found, place.pointer())).filter(node -> sameSpot(node.origin(), place)).flatMap(Written::text);
        return value.filter(source::equals).map(read -> new Written(file, lines, place.pointer(), read, stretch, name));
    }

    /** The change after which another text is read there, with quotes where it needs them; empty where no way leads to that. */
    Optional<TextEdit> as(String other) {
        return ways(other).filter(way -> reads(other, way)).findFirst().map(way -> new TextEdit(lines.range(stretch.from(), stretch.to()), way));
    }

    private Stream<String> ways(String other) {
        String text = lines.text();
        char before = stretch.from() > 0 ? text.charAt(stretch.from() - 1) : ' ';
        boolean quoted = (before == '"' || before == '\'') && stretch.to() < text.length() && text.charAt(stretch.to()) == before;
        if (!quoted) {
            return Stream.of(other, inQuotes(other));
        }
        String within = inQuotes(other);
        return Stream.of(before == '"' ? within.substring(1, within.length() - 1) : other.replace("'", "''"));
    }

    /** A text in double quotes, as JSON and YAML both read it; ids and subjects hold nothing else that would have to be written otherwise. */
    static String inQuotes(String text) {
        return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }

    private boolean reads(String other, String way) {
        String text = lines.text();
        Document before = OpenText.read(file, text);
        Document after = OpenText.read(file, text.substring(0, stretch.from()) + way + text.substring(stretch.to()));
        if (after.root().isEmpty() || after.problems().size() > before.problems().size()) {
            return false;
        } else if (!name) {
            return Places.at(after.root().get(), pointer).flatMap(Written::text).filter(other::equals).isPresent();
        }
        String outer = pointer.substring(0, pointer.lastIndexOf('/'));
        List<String> names = names(before, outer).map(each -> each.equals(value) ? other : each).toList();
        return names.equals(names(after, outer).toList());
    }

    private static Stream<String> names(Document document, String pointer) {
        return document.root().flatMap(root -> Places.at(root, pointer)).stream()
                .flatMap(node -> node instanceof Node.Obj object ? object.members().keySet().stream() : Stream.empty());
    }

    private static Optional<Node.Member> named(Node root, String pointer) {
        if (pointer.isEmpty()) {
            return Optional.empty();
        }
        return Places.at(root, pointer.substring(0, pointer.lastIndexOf('/')))
                .flatMap(outer -> outer instanceof Node.Obj object ? Optional.ofNullable(object.members().get(last(pointer))) : Optional.empty());
    }

    private static Optional<String> text(Node node) {
        return node instanceof Node.Text text ? Optional.of(text.value()) : Optional.empty();
    }

    private static boolean sameSpot(Origin one, Origin other) {
        return one.line() == other.line() && one.column() == other.column();
    }

    private static String last(String pointer) {
        return pointer.substring(pointer.lastIndexOf('/') + 1).replace("~1", "/").replace("~0", "~");
    }
}
