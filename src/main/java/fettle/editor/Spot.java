package fettle.editor;

import fettle.document.Document;
import fettle.document.Documents;
import fettle.document.Node;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is expected where someone types: found by putting a word of our own there in several ways, until the document can be read and holds
 * it. So whatever reads documents says what the place is for, and nothing about the format is said twice.
 *
 * @param document as it reads with {@link #MARK} in place of what is being typed
 * @param pointer of the value that the mark stands for, or of the object in which it names a property
 * @param name whether the mark names a property
 * @param typed what it stands in place of, without quotes
 * @param before what must be written before a word that is put there
 * @param after what must be written behind it
 */
record Spot(Document document, String pointer, boolean name, Extents.Stretch typed, String before, String after) {

    /** Stands where someone types. An id, so that it may stand wherever one may. */
    static final String MARK = "fettle.mark.here";

    private record Way(String put, int to, String before, String after) {}

    /** The spot at an offset; empty where nothing can be read around it. */
    static Optional<Spot> at(OpenText open, int offset) {
        return at(open, offset, MARK);
    }

    /** The same, with another text that holds {@link #MARK} being put there. */
    static Optional<Spot> at(OpenText open, int offset, String mark) {
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
        boolean quoted = from > 0 && text.charAt(from - 1) == '"';
        boolean json = open.file().toString().toLowerCase(java.util.Locale.ROOT).endsWith(".json");
        for (Way way : ways(text, to, quoted, json, mark)) {
            byte[] tried = (text.substring(0, from) + way.put() + text.substring(way.to())).getBytes(StandardCharsets.UTF_8);
            Document read = Documents.content(Session.shown(open.file()), tried);
            Optional<Spot> found = read.root().flatMap(root -> find(root, "", mark))
                    .map(place -> new Spot(read, place.pointer(), place.name(), new Extents.Stretch(0, 0), way.before(), place.name() ? way.after() : ""));
            if (found.isPresent()) {
                Spot spot = found.get();
                return Optional.of(new Spot(spot.document(), spot.pointer(), spot.name(), new Extents.Stretch(from, to), spot.before(), spot.after()));
            }
        }
        return Optional.empty();
    }

    private static boolean inWord(char at) {
        return Character.isLetterOrDigit(at) || "._-/:$".indexOf(at) >= 0;
    }

    /** A value, then a name whose value is still to come. In JSON each with quotes where there are none, and with the comma that may still be missing. */
    private static List<Way> ways(String text, int to, boolean quoted, boolean json, String mark) {
        List<Way> ways = new ArrayList<>();
        boolean closed = to < text.length() && text.charAt(to) == '"';
        if (quoted) {
            int behind = closed ? to + 1 : to;
            ways.add(new Way(mark, to, "", ""));
            ways.add(new Way(mark + "\"", behind, "", ""));
            ways.add(new Way(mark + "\",", behind, "", ""));
            ways.add(new Way(mark + "\": 0", behind, "", ""));
            ways.add(new Way(mark + "\": 0,", behind, "", ""));
        } else if (json) {
            ways.add(new Way("\"" + mark + "\"", to, "\"", "\""));
            ways.add(new Way("\"" + mark + "\",", to, "\"", "\""));
            ways.add(new Way("\"" + mark + "\": 0", to, "\"", "\": "));
            ways.add(new Way("\"" + mark + "\": 0,", to, "\"", "\": "));
        } else {
            ways.add(new Way(mark, to, "", ""));
            ways.add(new Way(mark + ":", to, "", ": "));
            ways.add(new Way(" " + mark, to, " ", ""));
        }
        return ways;
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
