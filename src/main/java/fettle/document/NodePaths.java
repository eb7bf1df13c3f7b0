package fettle.document;

import com.networknt.schema.path.NodePath;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds nodes by the steps that lead to them from the root. */
final class NodePaths {
    private NodePaths() {}

    static List<Object> steps(NodePath path) {
        List<Object> steps = new ArrayList<>();
        for (int i = 0; i < path.getNameCount(); i++) {
            steps.add(path.getElement(i));
        }
        return steps;
    }

    /** The nodes on the way, the root first and the one that the steps lead to last. */
    static List<Node> along(Node root, List<Object> steps) {
        List<Node> nodes = new ArrayList<>(List.of(root));
        for (Object step : steps) {
            nodes.add(child(nodes.get(nodes.size() - 1), step));
        }
        return nodes;
    }

    private static Node child(Node parent, Object step) {
        if (parent instanceof Node.Obj object && object.members().containsKey(step.toString())) {
            return object.members().get(step.toString()).value();
        } else if (parent instanceof Node.Arr list && step instanceof Integer index) {
            return list.items().get(index);
        }
        throw new IllegalArgumentException("no step " + step + " from " + parent.origin());
    }

    static Optional<Node> member(Node node, String name) {
        return node instanceof Node.Obj object
                ? Optional.ofNullable(object.members().get(name)).map(Node.Member::value) : Optional.empty();
    }

    /** The text of a member, where it is one. */
    static Optional<String> text(Node node, String name) {
        return member(node, name).filter(Node.Text.class::isInstance).map(text -> ((Node.Text) text).value());
    }
}
