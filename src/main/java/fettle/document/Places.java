package fettle.document;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Finds where the pieces of an entry stand, given where the entry does, and what documents are called. */
public final class Places {

    private final Map<String, Node> roots = new HashMap<>();
    private final Map<String, String> names = new HashMap<>();

    /** The places of these documents. */
    public Places(Collection<Document> documents) {
        for (Document document : documents) {
            names.put(document.file(), document.name());
            document.root().ifPresent(root -> roots.put(document.file(), root));
        }
    }

    /** What the document in a file is called, however people named the folder in which it is. */
    public String document(String file) {
        return names.getOrDefault(file, Document.nameOf(file));
    }

    /**
     * The place of a value inside another.
     *
     * @param entry where the outer value stands
     * @param steps names and positions from there inward, joined by {@code /}
     * @return {@code entry} itself where nothing stands there
     */
    public Origin inside(Origin entry, String steps) {
        return Optional.ofNullable(roots.get(entry.file()))
                .flatMap(root -> at(root, entry.pointer()))
                .flatMap(outer -> walk(outer, steps, false))
                .map(Node::origin)
                .orElse(entry);
    }

    /** The value that a pointer (RFC 6901) leads to. */
    public static Optional<Node> at(Node root, String pointer) {
        return walk(root, pointer.isEmpty() ? "" : pointer.substring(1), true);
    }

    private static Optional<Node> walk(Node from, String steps, boolean escaped) {
        Node here = from;
        for (String step : steps.isEmpty() ? new String[0] : steps.split("/", -1)) {
            Optional<Node> next = step(here, escaped ? step.replace("~1", "/").replace("~0", "~") : step);
            if (next.isEmpty()) {
                return next;
            }
            here = next.get();
        }
        return Optional.of(here);
    }

    private static Optional<Node> step(Node from, String step) {
        if (from instanceof Node.Obj object) {
            return Optional.ofNullable(object.members().get(step)).map(Node.Member::value);
        }
        if (from instanceof Node.Arr array && step.matches("\\d{1,9}") && Integer.parseInt(step) < array.items().size()) {
            return Optional.of(array.items().get(Integer.parseInt(step)));
        }
        return Optional.empty();
    }
}
