package fettle.editor;

import fettle.document.Document;
import fettle.document.Documents;
import fettle.document.Node;
import fettle.document.SchemaGuide;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What is expected where someone types: found by putting a word of our own there in several ways, until the document can be read and holds
 * it where its format has room for it. So whatever reads documents says what the place is for, and nothing about the format is said twice.
 *
 * @param document as it reads with {@link #MARK} in place of what is being typed
 * @param pointer of the value that the mark stands for, or of the object in which it names a property
 * @param name whether the mark names a property
 * @param typed what it stands in place of, without quotes
 * @param quotes what is written around it
 * @param before what must be written before a word that is put there
 * @param after what must be written behind it
 */
record Spot(Document document, String pointer, boolean name, Extents.Stretch typed, Quotes quotes, String before, String after) {

    /** Stands where someone types. An id, so that it may stand wherever one may. */
    static final String MARK = "fettle.mark.here";

    /** What a text is written in: the quotes that are there already, those that JSON must have and that are missing, or in YAML none unless it needs them. */
    enum Quotes { THERE, MISSING, NONE }

    /** One way to put the mark, from the start of what is typed up to {@code to}. */
    private record Way(String put, int to, String before, String afterValue, String afterName) {}

    /** The spot at an offset; empty where nothing can be read around it. */
    static Optional<Spot> at(OpenText open, int offset, SchemaGuide guide) {
        return at(open, offset, guide, MARK);
    }

    /** The same, with another text that holds {@link #MARK} being put there. */
    static Optional<Spot> at(OpenText open, int offset, SchemaGuide guide, String mark) {
        String text = open.lines().text();
        int from = offset;
        while (from > 0 && inWord(text.charAt(from - 1))) {
            from--;
        }
        int to = offset;
        while (to < text.length() && inWord(text.charAt(to))) {
            to++;
        }
        while (to > offset && text.charAt(to - 1) == ':') {
            to--;
        }
        boolean quoted = from > 0 && "\"'".indexOf(text.charAt(from - 1)) >= 0;
        boolean json = open.file().toString().toLowerCase(Locale.ROOT).endsWith(".json");
        if (!quoted && !json && offset > from && text.charAt(offset - 1) == ':') {
            // Behind the colon of a property its value is next, after a space; behind that of a selector the word goes on.
            List<Spot> values = tried(open, new Extents.Stretch(offset, to), Quotes.NONE, List.of(new Way(" " + mark, to, " ", "", "")), mark);
            if (values.stream().anyMatch(spot -> !guide.types(spot.pointer()).isEmpty())) {
                return Optional.of(values.get(0));
            }
        }
        Quotes quotes = quoted ? Quotes.THERE : json ? Quotes.MISSING : Quotes.NONE;
        List<Way> ways = quoted ? inQuotes(text, text.charAt(from - 1), to, mark) : json ? inJson(to, mark) : inYaml(to, mark);
        List<Spot> spots = tried(open, new Extents.Stretch(from, to), quotes, ways, mark);
        return spots.stream().filter(spot -> spot.hasRoom(guide)).findFirst().or(() -> spots.stream().findFirst());
    }

    private static List<Spot> tried(OpenText open, Extents.Stretch typed, Quotes quotes, List<Way> ways, String mark) {
        String text = open.lines().text();
        List<Spot> spots = new ArrayList<>();
        for (Way way : ways) {
            Document read = OpenText.read(open.file(), text.substring(0, typed.from()) + way.put() + text.substring(way.to()));
            read.root().flatMap(root -> find(root, "", mark)).ifPresent(place -> spots.add(new Spot(
                    read, place.pointer(), place.name(), typed, quotes, way.before(), place.name() ? way.afterName() : way.afterValue())));
        }
        return spots;
    }

    private static boolean inWord(char at) {
        return Character.isLetterOrDigit(at) || "._-/:$".indexOf(at) >= 0;
    }

    /** A value, then a name whose value is still to come, each closed where it isn't yet, and with the comma that may still be missing. */
    private static List<Way> inQuotes(String text, char quote, int to, String mark) {
        boolean closed = to < text.length() && text.charAt(to) == quote;
        int behind = closed ? to + 1 : to;
        String afterValue = closed ? "" : String.valueOf(quote);
        String afterName = closed ? "" : quote + ": ";
        List<Way> ways = new ArrayList<>(List.of(new Way(mark, to, "", afterValue, afterName)));
        for (String end : new String[] {"", ",", ": 0", ": 0,"}) {
            ways.add(new Way(mark + quote + end, behind, "", afterValue, afterName));
        }
        return ways;
    }

    private static List<Way> inJson(int to, String mark) {
        List<Way> ways = new ArrayList<>();
        for (String end : new String[] {"", ",", ": 0", ": 0,"}) {
            ways.add(new Way("\"" + mark + "\"" + end, to, "", "", ": "));
        }
        return ways;
    }

    /** A value, then a name, then either where a space or the dash of a list is missing. */
    private static List<Way> inYaml(int to, String mark) {
        return List.of(
                new Way(mark, to, "", "", ": "), new Way(mark + ":", to, "", "", ": "), new Way(" " + mark, to, " ", "", ": "),
                new Way("- " + mark, to, "- ", "", ": "), new Way("- " + mark + ":", to, "- ", "", ": "));
    }

    /** Whether the format takes there what the mark stands for, as far as it says. */
    private boolean hasRoom(SchemaGuide guide) {
        Set<String> types = guide.types(pointer);
        return types.isEmpty() || (name ? types.contains("object") : !Set.of("object", "array").containsAll(types));
    }

    /** How a word is written there so that it is read as a text. */
    String text(String word) {
        boolean needed = quotes == Quotes.MISSING || quotes == Quotes.NONE && !(Documents.content("word.yaml", ("[" + word + "]").getBytes(StandardCharsets.UTF_8)).root()
                .orElse(null) instanceof Node.Arr read && read.items().size() == 1 && read.items().get(0) instanceof Node.Text text && text.value().equals(word));
        return needed ? Written.inQuotes(word) : word;
    }

    private record Place(String pointer, boolean name) {}

    private static Optional<Place> find(Node node, String pointer, String mark) {
        if (node instanceof Node.Text text) {
            return text.value().equals(mark) ? Optional.of(new Place(pointer, false)) : Optional.empty();
        } else if (node instanceof Node.Arr array) {
            for (int i = 0; i < array.items().size(); i++) {
                Optional<Place> found = find(array.items().get(i), pointer + "/" + i, mark);
                if (found.isPresent()) {
                    return found;
                }
            }
        } else if (node instanceof Node.Obj object) {
            for (var member : object.members().entrySet()) {
                if (member.getKey().equals(mark)) {
                    return Optional.of(new Place(pointer, true));
                }
                Optional<Place> found = find(member.getValue().value(), pointer + "/" + member.getKey().replace("~", "~0").replace("/", "~1"), mark);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }
}
