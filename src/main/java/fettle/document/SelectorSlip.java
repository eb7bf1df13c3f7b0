package fettle.document;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Tells which selector a text that is none was meant for: one with blanks in it, or with its prefix written otherwise. */
final class SelectorSlip {

    private static final Pattern SELECTOR = Pattern.compile("(?:kind:)?[a-z0-9][a-z0-9._-]{0,79}|tag:\\S{1,80}");
    private static final Pattern BLANK = Pattern.compile("\\s");
    private static final List<String> PREFIXES = List.of("kind", "tag");
    /** As findings name parts; a selector names one by its id alone. */
    private static final String PART = "part";

    private SelectorSlip() {}

    /** The selector that was probably meant. */
    static Optional<String> meant(String text) {
        int colon = text.indexOf(':');
        String target = text.substring(colon + 1).strip();
        if (colon < 0) {
            return formed(target);
        }
        String prefix = text.substring(0, colon).strip();
        if (!Nearest.names(prefix, List.of(PART)).isEmpty() || prefix.equals(PART)) {
            return formed(target);
        }
        return (PREFIXES.contains(prefix) ? Optional.of(prefix) : Nearest.names(prefix, PREFIXES).stream().findFirst()).flatMap(known -> formed(known + ":" + target));
    }

    private static Optional<String> formed(String text) {
        return Optional.of(text).filter(SELECTOR.asMatchPredicate());
    }

    /** What stands in it that can't be seen, in words that follow the text; empty where nothing does. */
    static String unseen(String text) {
        return BLANK.matcher(text).find() ? " with a blank in it" : "";
    }
}
