package fettle.space.patch;

import fettle.document.Node;
import fettle.document.Origin;
import fettle.space.Exact;
import fettle.space.Value;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Takes an entry apart into single statements, one a property, whatever its section: a property added to the format is compared without a line
 * here. Lists whose items have a name of their own are taken apart item by item; any other list is one statement.
 */
final class Statements {

    /**
     * One property's value.
     *
     * @param heading whether it stands for a slot, an offer or the like as a whole, with the statements inside it following
     */
    record Statement(List<String> path, Value value, Origin origin, boolean heading) {}

    /** By which property the items of a list are told apart. */
    static final Map<String, String> NAMED_BY = Map.of("slots", "id", "barter", "good");

    private static final Comparator<List<String>> BY_PATH = Statements::comparePaths;
    /** Objects whose members are named by ids, none of which says what a property of that name says elsewhere. */
    private static final Set<String> MAPS = Set.of("stats", "loaded", "traits", "factory", "offers", "vendors", "effects", "weights");
    /** Not said of the game: names of things, remarks, and the day on which somebody looked. */
    private static final Set<String> SILENT = Set.of("$schema", "id", "note", "part", "seen", "vendor");

    private final Defaults defaults;
    private final SortedMap<List<String>, Statement> found = new TreeMap<>(BY_PATH);

    private Statements(Defaults defaults) {
        this.defaults = defaults;
    }

    /** All statements of an entry by their paths, each heading before what stands under it. */
    static SortedMap<List<String>, Statement> of(Node.Obj entry) {
        Statements statements = new Statements(Defaults.ofSchema());
        statements.members(List.of(), entry, "");
        return statements.found;
    }

    /** Where one side states a plain value, such as a fixed bound, and the other a whole, such as a table, makes one statement of the whole. */
    static void sumUp(SortedMap<List<String>, Statement> plain, SortedMap<List<String>, Statement> wholes) {
        for (List<String> path : plain.keySet()) {
            if (!plain.get(path).heading && !wholes.containsKey(path)) {
                List<Statement> inside = inside(wholes, path);
                if (!inside.isEmpty()) {
                    List<String> summed = inside.stream()
                            .map(statement -> String.join(".", statement.path.subList(path.size(), statement.path.size())) + " " + statement.value.text())
                            .toList();
                    inside.forEach(statement -> wholes.remove(statement.path));
                    wholes.put(path, new Statement(path, Value.list(summed), inside.get(0).origin, false));
                }
            }
        }
    }

    private static List<Statement> inside(SortedMap<List<String>, Statement> statements, List<String> path) {
        List<Statement> inside = new ArrayList<>();
        for (Statement statement : statements.tailMap(path).values()) {
            if (statement.path.size() < path.size() || !statement.path.subList(0, path.size()).equals(path)) {
                break;
            }
            inside.add(statement);
        }
        return inside;
    }

    /** Whether two values are written alike, so that nothing in them need be compared. */
    static boolean alike(Node one, Node other) {
        if (one instanceof Node.Obj object && other instanceof Node.Obj another) {
            return object.members().size() == another.members().size() && object.members().entrySet().stream().allMatch(member -> {
                Node.Member same = another.members().get(member.getKey());
                return same != null && alike(member.getValue().value(), same.value());
            });
        } else if (one instanceof Node.Arr list && other instanceof Node.Arr another) {
            for (int i = 0; i < list.items().size() && list.items().size() == another.items().size(); i++) {
                if (!alike(list.items().get(i), another.items().get(i))) {
                    return false;
                }
            }
            return list.items().size() == another.items().size();
        }
        return one.getClass() == other.getClass() && text(one).equals(text(other));
    }

    private void members(List<String> path, Node.Obj object, String namedBy) {
        boolean map = !path.isEmpty() && MAPS.contains(path.get(path.size() - 1));
        object.members().forEach((name, member) -> {
            if (map || !SILENT.contains(name) && !name.equals(namedBy) && !defaults.states(name, member.value())) {
                List<String> inner = joined(path, name);
                if (map && member.value() instanceof Node.Obj item) {
                    item(inner, item, "");
                } else {
                    value(inner, member.value());
                }
            }
        });
    }

    private void value(List<String> path, Node node) {
        if (node instanceof Node.Obj object) {
            members(path, object, "");
        } else if (node instanceof Node.Arr list) {
            list(path, list);
        } else {
            put(path, Value.one(text(node)), node.origin(), false);
        }
    }

    private void list(List<String> path, Node.Arr list) {
        String namedBy = NAMED_BY.get(path.get(path.size() - 1));
        if (list.items().isEmpty()) {
            // Elsewhere an empty list says as much as none; a trait without values agrees with nothing, and without the trait with all.
            if (path.size() > 1 && path.get(path.size() - 2).equals("traits")) {
                put(path, Value.list(List.of()), list.origin(), false);
            }
            return;
        }
        if (namedBy == null || list.items().stream().noneMatch(Node.Obj.class::isInstance)) {
            put(path, Value.list(texts(list)), list.origin(), false);
            return;
        }
        for (Node node : list.items()) {
            if (node instanceof Node.Obj item && item.members().containsKey(namedBy)) {
                List<String> inner = joined(path, text(item.members().get(namedBy).value()));
                if (!found.containsKey(inner)) {
                    item(inner, item, namedBy);
                }
            }
        }
    }

    /** A named thing: a heading that sums it up, and what is under it. */
    private void item(List<String> path, Node.Obj item, String namedBy) {
        Statements inside = new Statements(defaults);
        inside.members(List.of(), item, namedBy);
        List<String> summed = new ArrayList<>();
        inside.found.values().stream()
                .filter(statement -> !statement.heading)
                .forEach(statement -> summed.add(String.join(".", statement.path) + " " + statement.value.text()));
        put(path, Value.list(summed), item.origin(), true);
        members(path, item, namedBy);
    }

    private void put(List<String> path, Value value, Origin origin, boolean heading) {
        found.put(path, new Statement(path, value, origin, heading));
    }

    static List<String> joined(List<String> path, String name) {
        List<String> longer = new ArrayList<>(path);
        longer.add(name);
        return List.copyOf(longer);
    }

    /** The items of a list: texts, and lists of texts, in alphabetical order since theirs says nothing; numbers in theirs. */
    private static List<String> texts(Node.Arr list) {
        boolean ordered = list.items().stream().anyMatch(item -> item instanceof Node.Num || item instanceof Node.Obj || numeric(item));
        List<String> texts = list.items().stream().map(Statements::text).toList();
        return ordered ? texts : texts.stream().sorted().distinct().toList();
    }

    private static boolean numeric(Node node) {
        return node instanceof Node.Arr list && list.items().stream().anyMatch(Node.Num.class::isInstance);
    }

    /** A value on one line. */
    static String text(Node node) {
        if (node instanceof Node.Text text) {
            return text.value();
        } else if (node instanceof Node.Num number) {
            return Exact.text(number.value());
        } else if (node instanceof Node.Bool bool) {
            return String.valueOf(bool.value());
        } else if (node instanceof Node.Arr list) {
            return numeric(list) ? "(" + String.join(", ", texts(list)) + ")" : String.join(" or ", texts(list));
        } else if (node instanceof Node.Obj object) {
            List<String> members = new ArrayList<>();
            object.members().forEach((name, member) -> members.add(name + " " + text(member.value())));
            return String.join(" ", members.stream().sorted().toList());
        }
        return "null";
    }

    private static int comparePaths(List<String> one, List<String> other) {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
            int compared = one.get(i).compareTo(other.get(i));
            if (compared != 0) {
                return compared;
            }
        }
        return Integer.compare(one.size(), other.size());
    }
}
