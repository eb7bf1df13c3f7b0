package fettle.space.patch;

import fettle.document.Node;
import fettle.document.Origin;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Takes one property of an entry over from another version of it, or writes other words into it. */
final class NodeEdit {

    private NodeEdit() {}

    /** The target with the property at the path as the source has it: replaced, added, or left out where the source has none. */
    static Node.Obj copied(Node.Obj target, Node.Obj source, List<String> path) {
        return (Node.Obj) copied(Optional.of(target), Optional.of(source), path, "").orElse(target);
    }

    /** The same value with other texts where some stand. */
    static Node rewritten(Node node, Map<Origin, String> texts) {
        if (node instanceof Node.Obj object) {
            Map<String, Node.Member> members = new LinkedHashMap<>();
            object.members().forEach((name, member) -> members.put(name, new Node.Member(member.key(), rewritten(member.value(), texts))));
            return new Node.Obj(members, object.origin());
        } else if (node instanceof Node.Arr list) {
            return new Node.Arr(list.items().stream().map(item -> rewritten(item, texts)).toList(), list.origin());
        }
        return node instanceof Node.Text text && texts.containsKey(text.origin()) ? new Node.Text(texts.get(text.origin()), text.origin()) : node;
    }

    private static Optional<Node> copied(Optional<Node> target, Optional<Node> source, List<String> path, String name) {
        if (path.isEmpty() || source.isEmpty() && target.isEmpty()) {
            return source;
        }
        String next = path.get(0);
        Optional<Node> inner = copied(
                target.flatMap(node -> child(node, name, next)), source.flatMap(node -> child(node, name, next)), path.subList(1, path.size()), next);
        boolean fresh = target.filter(NodeEdit::holds).isEmpty();
        Optional<Node> known = fresh ? source.filter(NodeEdit::holds) : target;
        if (known.isEmpty()) {
            return target;
        }
        Node container = known.get();
        if (container instanceof Node.Arr list) {
            return Optional.of(withItem(list, fresh, Statements.NAMED_BY.get(name), next, inner));
        }
        return Optional.of(withMember((Node.Obj) container, fresh, next, inner));
    }

    /** Whether a value can hold others. */
    private static boolean holds(Node node) {
        return node instanceof Node.Obj || node instanceof Node.Arr;
    }

    private static Optional<Node> child(Node node, String name, String child) {
        if (node instanceof Node.Obj object) {
            return Optional.ofNullable(object.members().get(child)).map(Node.Member::value);
        }
        String namedBy = Statements.NAMED_BY.get(name);
        return node instanceof Node.Arr list ? list.items().stream().filter(item -> named(item, namedBy, child)).findFirst() : Optional.empty();
    }

    private static boolean named(Node item, String namedBy, String name) {
        return item instanceof Node.Obj object && WrittenCatalog.text(object, namedBy).equals(Optional.of(name));
    }

    private static Node.Arr withItem(Node.Arr list, boolean fresh, String namedBy, String name, Optional<Node> item) {
        List<Node> items = new ArrayList<>();
        boolean placed = false;
        for (Node each : fresh ? List.<Node>of() : list.items()) {
            if (!named(each, namedBy, name)) {
                items.add(each);
            } else if (!placed) {
                item.ifPresent(items::add);
                placed = true;
            }
        }
        if (!placed) {
            item.ifPresent(items::add);
        }
        return new Node.Arr(items, list.origin());
    }

    private static Node.Obj withMember(Node.Obj object, boolean fresh, String name, Optional<Node> value) {
        Map<String, Node.Member> members = new LinkedHashMap<>(fresh ? Map.of() : object.members());
        if (value.isPresent()) {
            Origin key = value.get().origin();
            members.put(name, new Node.Member(key, value.get()));
        } else {
            members.remove(name);
        }
        return new Node.Obj(members, object.origin());
    }
}
