package fettle.document;

import fettle.document.PlaceFinder.Place;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The first of the lines that a merge leaves in a text where two changes met; no parser knows what they are. */
record MergeMarker(Place place, String shown) {

    /** What stands between the two sides; by itself it could be a rule below a heading in a text. */
    private static final Pattern BETWEEN = Pattern.compile("^={7}$", Pattern.MULTILINE);

    private static final Pattern LINE = Pattern.compile("^(<{7}|>{7})(?= |$)", Pattern.MULTILINE);

    /** The first such line; empty where there is none. */
    static Optional<MergeMarker> in(String text) {
        Matcher line = LINE.matcher(text);
        return line.find() ? Optional.of(new MergeMarker(new PlaceFinder(text).at(line.start()), line.group(1))) : Optional.empty();
    }

    /** The same, and also what stands between the two sides where reading ended in a line, or in the one below it. */
    static Optional<MergeMarker> in(String text, int line) {
        return in(text).or(() -> {
            PlaceFinder places = new PlaceFinder(text);
            return BETWEEN.matcher(text).results().map(found -> new MergeMarker(places.at(found.start()), found.group()))
                    .filter(marker -> marker.place.line() == line || marker.place.line() == line - 1).findFirst();
        });
    }

    String what() {
        return "a merge has left both of its sides in the document: a line begins with " + shown;
    }

    String remedy() {
        return "keep one side, or what both say together, and delete the lines that begin with <<<<<<<, ======= and >>>>>>>";
    }
}
