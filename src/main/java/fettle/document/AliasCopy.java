package fettle.document;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Copies what a YAML anchor marks to where an alias names it. Copies keep the lines of the original, which is where their
 * text stands, but take the pointers of their new place. How much is copied in all is bounded, since aliases of aliases grow without end.
 */
final class AliasCopy {
    /** How many values aliases may stand for in one document. */
    static final int MOST_COPIED = 200_000;

    private final TreeBuilder tree;
    private int copied;

    AliasCopy(TreeBuilder tree) {
        this.tree = tree;
    }

    Node of(Node original, Origin alias) throws StopReading {
        return copy(original, alias, alias, tree.depth());
    }

    private Node copy(Node original, Origin place, Origin alias, int depth) throws StopReading {
        copied++;
        if (copied > MOST_COPIED) {
            tree.report(alias, "the document's aliases stand for more than " + MOST_COPIED + " values",
                    "write the entries out, or use fewer aliases of aliases");
            throw new StopReading();
        }
        if (original instanceof Node.Obj object) {
            tree.checkDepth(depth + 1, alias);
            Map<String, Node.Member> members = new LinkedHashMap<>();
            for (Map.Entry<String, Node.Member> member : object.members().entrySet()) {
                String pointer = Pointers.child(place.pointer(), member.getKey());
                Node.Member value = member.getValue();
                members.put(member.getKey(), new Node.Member(moved(value.key(), pointer),
                        copy(value.value(), moved(value.value().origin(), pointer), alias, depth + 1)));
            }
            return new Node.Obj(members, place);
        } else if (original instanceof Node.Arr list) {
            tree.checkDepth(depth + 1, alias);
            List<Node> items = new ArrayList<>();
            for (Node item : list.items()) {
                String pointer = Pointers.child(place.pointer(), items.size());
                items.add(copy(item, moved(item.origin(), pointer), alias, depth + 1));
            }
            return new Node.Arr(items, place);
        } else if (original instanceof Node.Text text) {
            return new Node.Text(text.value(), place);
        } else if (original instanceof Node.Num number) {
            return new Node.Num(number.value(), place);
        } else if (original instanceof Node.Bool bool) {
            return new Node.Bool(bool.value(), place);
        }
        return new Node.Nil(place);
    }

    private static Origin moved(Origin origin, String pointer) {
        return new Origin(origin.file(), origin.line(), origin.column(), pointer);
    }
}
