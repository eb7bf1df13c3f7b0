package fettle.document;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Puts a tree of located nodes together from the pieces that a reader comes upon, in their order. What both formats can do
 * wrong (names given twice, numbers without end, too deep a nesting) is found here, once.
 */
final class TreeBuilder {
    /** How many objects and lists may stand in one another. */
    static final int DEEPEST = 200;

    private static final int MOST_PROBLEMS = 100;

    private final String file;
    private final List<DocumentProblem> problems = new ArrayList<>();
    private final Deque<Open> open = new ArrayDeque<>();
    private Optional<Node> root = Optional.empty();

    TreeBuilder(String file) {
        this.file = file;
    }

    /** An object or list whose end has not come yet. */
    private static final class Open {
        final Origin origin;
        final boolean isObject;
        final Map<String, Node.Member> members = new LinkedHashMap<>();
        final List<Node> items = new ArrayList<>();
        int nextIndex;
        Optional<Name> name = Optional.empty();

        Open(Origin origin, boolean isObject) {
            this.origin = origin;
            this.isObject = isObject;
        }

        Node closed() {
            return isObject ? new Node.Obj(members, origin) : new Node.Arr(items, origin);
        }

        void add(Node value) {
            if (!isObject) {
                items.add(value);
                nextIndex++;
                return;
            }
            Name current = name.orElseThrow();
            name = Optional.empty();
            if (!current.repeated()) {
                members.put(current.text(), new Node.Member(current.origin(), value));
            }
        }
    }

    private record Name(String text, Origin origin, boolean repeated) {}

    /** Where a value that begins here stands. */
    Origin here(int line, int column) {
        return new Origin(file, line, column, pointer());
    }

    private String pointer() {
        Open innermost = open.peek();
        if (innermost == null) {
            return "";
        }
        return innermost.isObject
                ? innermost.name.map(name -> name.origin().pointer()).orElse(innermost.origin.pointer())
                : Pointers.child(innermost.origin.pointer(), innermost.nextIndex);
    }

    void beginObject(int line, int column) throws StopReading {
        begin(line, column, true);
    }

    void beginList(int line, int column) throws StopReading {
        begin(line, column, false);
    }

    private void begin(int line, int column, boolean isObject) throws StopReading {
        Origin origin = here(line, column);
        checkDepth(depth() + 1, origin);
        open.push(new Open(origin, isObject));
    }

    /** How many objects and lists are open. */
    int depth() {
        return open.size();
    }

    void checkDepth(int depth, Origin origin) throws StopReading {
        if (depth > DEEPEST) {
            report(origin, "objects and lists stand more than " + DEEPEST + " deep in one another",
                    "flatten the document; a catalog needs no more than a dozen levels");
            throw new StopReading();
        }
    }

    /** Ends the innermost object or list, and returns it. */
    Node end() {
        return place(open.pop().closed());
    }

    /** Takes the name of the next member of the innermost object. */
    void name(String text, int line, int column) {
        Open object = open.element();
        Origin origin = new Origin(file, line, column, Pointers.child(object.origin.pointer(), text));
        Node.Member first = object.members.get(text);
        if (first != null) {
            report(origin, "the name " + Words.quoted(text) + " stands twice in one object, first in line " + first.key().line(),
                    "keep one of the two; until then the first one counts");
        }
        object.name = Optional.of(new Name(text, origin, first != null));
    }

    Node text(String value, int line, int column) {
        return place(new Node.Text(value, here(line, column)));
    }

    Node bool(boolean value, int line, int column) {
        return place(new Node.Bool(value, here(line, column)));
    }

    Node nil(int line, int column) {
        return place(new Node.Nil(here(line, column)));
    }

    /** Takes a decimal literal; one that is too long is reported and leaves a null. */
    Node number(String literal, int line, int column) {
        Origin origin = here(line, column);
        Optional<BigDecimal> value = Decimals.read(literal);
        if (value.isEmpty()) {
            report(origin, "the number " + Words.shortened(literal) + " is too long to compute with",
                    "write at most " + Decimals.MOST_DIGITS + " digits before the decimal point and as many behind it");
            return place(new Node.Nil(origin));
        }
        return place(new Node.Num(value.get(), origin));
    }

    /** Puts a node that was made elsewhere in the place of the next value. */
    Node place(Node value) {
        if (open.isEmpty()) {
            root = Optional.of(value);
        } else {
            open.element().add(value);
        }
        return value;
    }

    void report(Origin origin, String what, String remedy) {
        if (problems.size() < MOST_PROBLEMS) {
            problems.add(new DocumentProblem(origin, what, remedy));
        } else if (problems.size() == MOST_PROBLEMS) {
            problems.add(new DocumentProblem(origin, "there are more problems of this sort from here on",
                    "mend those above first"));
        }
    }

    /** The document, when all of it has been read. */
    Document finished() {
        return new Document(file, root, problems);
    }

    /**
     * The document, when reading had to stop early: of the outermost object the members that are complete, and of a list
     * among them that is not, the entries that are. An entry cut short is left out, since it would look as if it lacked something.
     */
    Document cutShort() {
        if (open.isEmpty()) {
            // A word before what could not be read was not meant for the whole document.
            boolean whole = root.filter(node -> node instanceof Node.Obj || node instanceof Node.Arr).isPresent();
            return whole ? finished() : new Document(file, Optional.empty(), problems, true);
        }
        List<Open> fromOutside = new ArrayList<>(open);
        Collections.reverse(fromOutside);
        Open outermost = fromOutside.get(0);
        if (!outermost.isObject) {
            return new Document(file, Optional.empty(), problems, true);
        }
        if (fromOutside.size() > 1 && !fromOutside.get(1).isObject) {
            outermost.add(fromOutside.get(1).closed());
        }
        Optional<Node> trusted = outermost.members.isEmpty() ? Optional.empty() : Optional.of(outermost.closed());
        return new Document(file, trusted, problems, true);
    }
}
