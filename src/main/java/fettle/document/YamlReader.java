package fettle.document;

import fettle.document.PlaceFinder.Place;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.common.Anchor;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Reads YAML into located nodes, event by event. Events are taken rather than the library's own nodes, because those are
 * composed by recursion without a bound on depth, and all or nothing.
 */
final class YamlReader {
    private static final int LARGEST_BUFFER = 1 << 20;
    private static final String STANDARD_TAGS = "tag:yaml.org,2002:";
    private static final Pattern FIGURES = Pattern.compile("-?\\d+");
    private static final Pattern REST = Pattern.compile("\\d+(?:\\.\\d+)?");
    private static final Set<String> KNOWN_TAGS = Set.of("str", "int", "float", "bool", "null", "map", "seq");

    private final TreeBuilder tree;
    private final Iterator<Event> events;
    private final Map<Anchor, Node> anchored = new HashMap<>();
    private final String text;
    private final Deque<Event> brackets = new ArrayDeque<>();
    private final Set<Anchor> unfinished = new HashSet<>();
    private final AliasCopy copies;
    /** Characters up to the end of what was read last. */
    private int passed;
    /** The value read last, where it is a whole number. */
    private Optional<ScalarEvent> number = Optional.empty();
    /** Where the number with a comma that was told last ends. */
    private Place told = new Place(0, 0);
    /** How much of the text has been counted, in characters and in code points. */
    private int counted;
    private int countedPoints;

    private YamlReader(TreeBuilder tree, String text) {
        this.tree = tree;
        this.text = text;
        this.events = new Parse(settings(text.length())).parseString(text).iterator();
        this.copies = new AliasCopy(tree);
    }

    /** The parser copies all that it holds for each buffer that it adds, so that small buffers make long texts take quadratic time. */
    private static LoadSettings settings(int length) {
        return LoadSettings.builder()
                .setCodePointLimit(Integer.MAX_VALUE)
                .setBufferSize(Math.min(length + 1, LARGEST_BUFFER))
                .build();
    }

    static Document read(String file, String text) {
        TreeBuilder tree = new TreeBuilder(file);
        YamlReader reader = new YamlReader(tree, text);
        try {
            reader.readDocument();
            return tree.finished();
        } catch (StopReading reported) {
            return tree.cutShort();
        } catch (YamlEngineException notYaml) {
            (notYaml.getCause() instanceof NumberFormatException ? YamlFault.escaped(text, reader.passed) : YamlFault.of(notYaml, text, reader.bracket())).report(tree);
            return tree.cutShort();
        }
    }

    /** The next event. The parser takes an escaped character's number for a signed one, and throws what no parser should where it isn't. */
    private Event next() {
        try {
            Event event = events.next();
            passed = event.getEndMark().map(Mark::getIndex).orElse(passed);
            return event;
        } catch (NumberFormatException beyondAnyCharacter) {
            throw new YamlEngineException(beyondAnyCharacter);
        }
    }

    private void readDocument() throws StopReading {
        Event event = afterMarkers();
        if (!(event instanceof NodeEvent first) || isNothing(event)) {
            EmptyText.report(tree);
            return;
        }
        readValue(first);
        if (afterMarkers() instanceof NodeEvent next) {
            tree.report(tree.here(line(next), column(next)), "a second YAML document begins here",
                    "keep one document in a file: move what follows '---' to a file of its own");
        }
    }

    /** The next event that is not merely the begin or end of the stream or of a document. */
    private Event afterMarkers() {
        Event event = next();
        while (event.getEventId() != Event.ID.StreamEnd && !(event instanceof NodeEvent)) {
            event = next();
        }
        return event;
    }

    private static boolean isNothing(Event event) {
        return event instanceof ScalarEvent scalar && scalar.isPlain() && scalar.getValue().isEmpty();
    }

    private void readValue(Event event) throws StopReading {
        NodeEvent begin = (NodeEvent) event;
        if (begin instanceof AliasEvent alias) {
            readAlias(alias);
            return;
        }
        begin.getAnchor().ifPresent(unfinished::add);
        Node node = begin instanceof ScalarEvent scalar ? readScalar(scalar) : readCollection((CollectionStartEvent) begin);
        begin.getAnchor().ifPresent(anchor -> {
            unfinished.remove(anchor);
            anchored.put(anchor, node);
        });
    }

    private Node readCollection(CollectionStartEvent begin) throws StopReading {
        checkTag(begin, begin.getTag().orElse(""));
        if (begin.isFlow()) {
            brackets.push(begin);
        }
        if (begin instanceof MappingStartEvent) {
            tree.beginObject(line(begin), column(begin));
            for (Event key = next(); key.getEventId() != Event.ID.MappingEnd; key = next()) {
                readMember(key);
            }
        } else {
            tree.beginList(line(begin), column(begin));
            for (Event item = next(); item.getEventId() != Event.ID.SequenceEnd; item = next()) {
                readValue(item);
            }
        }
        if (begin.isFlow()) {
            brackets.pop();
        }
        return tree.end();
    }

    /** Where the innermost bracket opens that is not closed yet. */
    private Optional<Mark> bracket() {
        return Optional.ofNullable(brackets.peek()).flatMap(Event::getStartMark);
    }

    private void readMember(Event key) throws StopReading {
        if (key instanceof ScalarEvent scalar) {
            if (cutByComma(scalar)) {
                skip(next());
                return;
            }
            checkName(scalar);
            scalar.getAnchor().ifPresent(anchor ->
                    anchored.put(anchor, new Node.Text(scalar.getValue(), tree.here(line(scalar), column(scalar)))));
            tree.name(scalar.getValue(), line(scalar), column(scalar));
            readValue(next());
        } else if (key instanceof AliasEvent alias && anchored.get(alias.getAlias()) instanceof Node.Text text) {
            tree.name(text.value(), line(alias), column(alias));
            readValue(next());
        } else {
            tree.report(tree.here(line(key), column(key)), "the name of a property must be a text, but this is none",
                    "write a plain name before the colon");
            skip(key);
            skip(next());
        }
    }

    /** Whether a name is the rest of a number with a comma in it, for which YAML takes it between braces. */
    private boolean cutByComma(ScalarEvent key) {
        if (line(key) == told.line() && column(key) < told.column()) {
            return true;
        }
        boolean rest = number.isPresent() && key.isPlain() && REST.matcher(key.getValue()).matches()
                && line(key) == line(number.get()) && column(key) == column(number.get()) + number.get().getValue().length() + 1;
        Optional<CommaNumber> cut = rest ? CommaNumber.at(text, offset(number.get())) : Optional.empty();
        cut.ifPresent(whole -> {
            Origin begin = tree.here(line(number.get()), column(number.get()));
            told = new Place(begin.line(), begin.column() + whole.written().length());
            tree.report(begin, "YAML takes the comma in " + whole.written() + " for the end of " + number.get().getValue(), "write " + whole.readings());
        });
        return cut.isPresent();
    }

    /** Where in the text an event begins; the parser counts code points. What is asked for rises, so that the text is counted once. */
    private int offset(Event event) {
        int index = event.getStartMark().map(Mark::getIndex).orElse(countedPoints);
        counted = text.offsetByCodePoints(counted, index - countedPoints);
        countedPoints = index;
        return counted;
    }

    private void checkName(ScalarEvent key) {
        if (key.isPlain() && key.getTag().isEmpty() && YamlScalar.of(key.getValue()) != YamlScalar.TEXT) {
            String shown = key.getValue().isEmpty() ? "nothing" : Words.shortened(key.getValue());
            tree.report(tree.here(line(key), column(key)), "the name of a property must be a text, but YAML takes "
                    + shown + " for something else", "put the name in quotes");
        }
    }

    private Node readScalar(ScalarEvent scalar) {
        String tag = scalar.getTag().orElse("");
        checkTag(scalar, tag);
        number = Optional.of(scalar).filter(value -> value.isPlain() && FIGURES.matcher(value.getValue()).matches());
        int line = line(scalar);
        int column = column(scalar);
        String value = scalar.getValue();
        boolean isText = !scalar.isPlain() && tag.isEmpty() || tag.equals("!") || tag.equals(STANDARD_TAGS + "str");
        YamlScalar meaning = isText ? YamlScalar.TEXT : YamlScalar.of(value);
        return switch (meaning) {
            case NULL -> tree.nil(line, column);
            case TRUE, FALSE -> tree.bool(meaning == YamlScalar.TRUE, line, column);
            case NUMBER -> tree.number(value, line, column);
            case TEXT -> tree.text(value, line, column);
        };
    }

    private void checkTag(NodeEvent event, String tag) {
        boolean known = tag.isEmpty() || tag.equals("!")
                || tag.startsWith(STANDARD_TAGS) && KNOWN_TAGS.contains(tag.substring(STANDARD_TAGS.length()));
        if (!known) {
            tree.report(tree.here(line(event), column(event)), "the YAML tag " + Words.quoted(tag) + " means nothing here",
                    "delete the tag");
        }
    }

    private void readAlias(AliasEvent alias) throws StopReading {
        Origin here = tree.here(line(alias), column(alias));
        String name = "*" + Words.shortened(alias.getAlias().getValue());
        if (unfinished.contains(alias.getAlias())) {
            tree.report(here, "the alias " + name + " stands inside what it names", "write out what is meant");
            tree.place(new Node.Nil(here));
        } else if (anchored.containsKey(alias.getAlias())) {
            tree.place(copies.of(anchored.get(alias.getAlias()), here));
        } else {
            tree.report(here, "the alias " + name + " names no anchor above it",
                    "mark what is meant with &" + Words.shortened(alias.getAlias().getValue()) + " further up, or write it out");
            tree.place(new Node.Nil(here));
        }
    }

    /** Passes over one value. */
    private void skip(Event begin) throws StopReading {
        int depth = 0;
        Event event = begin;
        while (true) {
            if (event instanceof CollectionStartEvent) {
                depth++;
                tree.checkDepth(depth, tree.here(line(event), column(event)));
            } else if (event.getEventId() == Event.ID.MappingEnd || event.getEventId() == Event.ID.SequenceEnd) {
                depth--;
            }
            if (depth == 0) {
                return;
            }
            event = next();
        }
    }

    private static int line(Event event) {
        return event.getStartMark().map(Mark::getLine).orElse(0) + 1;
    }

    private static int column(Event event) {
        return event.getStartMark().map(Mark::getColumn).orElse(0) + 1;
    }
}
