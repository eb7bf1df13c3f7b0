package fettle.document;

import fettle.document.PlaceFinder.Place;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Words a slip in YAML for people who write it by hand. */
record YamlFault(Place place, String what, String remedy) {

    /** A name, a colon and a value; in a list {@code kind:} and {@code tag:} begin selectors. */
    private static final Pattern STUCK = Pattern.compile("(\\s*(?:- +(?!kind:|tag:))*)([A-Za-z_][\\w-]*):([^\\s:/#,\\[{][^:#]*)");
    private static final String QUOTES = "\"'";
    private static final Pattern BEYOND = Pattern.compile("\\\\U[89a-fA-F][0-9a-fA-F]{7}");

    void report(TreeBuilder tree) {
        tree.report(tree.here(place.line(), place.column()), what, remedy);
    }

    /** The slip at which the parser stopped, inside a bracket where one was open. */
    static YamlFault of(YamlEngineException notYaml, String text, Optional<Mark> bracket) {
        Optional<MergeMarker> merge = notYaml instanceof MarkedYamlEngineException marked ? MergeMarker.in(text, place(marked).line()) : MergeMarker.in(text);
        if (merge.isPresent()) {
            return new YamlFault(merge.get().place(), merge.get().what(), merge.get().remedy());
        } else if (notYaml instanceof ReaderException unreadable) {
            // The parser refuses the first such character, so the first in the text is the one.
            int offset = Math.max(0, text.indexOf(unreadable.getCodePoint()));
            return new YamlFault(new PlaceFinder(text).at(offset),
                    "the character " + Words.quotedCharacter(unreadable.getCodePoint()) + " may not stand in YAML",
                    "delete it, or write it as an escape between double quotes");
        } else if (notYaml instanceof MarkedYamlEngineException marked) {
            Place place = place(marked);
            String parserSays = marked.getContext() + " " + marked.getProblem();
            Optional<YamlFault> stuck = parserSays.contains("mapping values are not allowed") || parserSays.contains("could not find expected ':'")
                    ? stuck(text, place.line()) : Optional.empty();
            if (stuck.isPresent()) {
                return stuck.get();
            }
            Optional<Place> opened = bracket.map(YamlFault::place).filter(open -> open.line() < place.line() && isBetween(parserSays));
            return unclosed(marked, text, parserSays, bracket).orElseGet(() -> new YamlFault(place,
                    what(parserSays) + opened.map(open -> ", in what opens in line " + open.line()).orElse(""), remedy(parserSays)));
        }
        return new YamlFault(new Place(1, 1), "this is not YAML", "correct the document");
    }

    private static Place place(MarkedYamlEngineException marked) {
        return marked.getProblemMark().or(marked::getContextMark).map(YamlFault::place).orElse(new Place(1, 1));
    }

    private static Place place(Mark mark) {
        return new Place(mark.getLine() + 1, mark.getColumn() + 1);
    }

    /** A quote or bracket without its other one, where it opens: the text goes on to the end from there. */
    private static Optional<YamlFault> unclosed(MarkedYamlEngineException marked, String text, String parserSays, Optional<Mark> bracket) {
        if (!endsEarly(parserSays)) {
            return Optional.empty();
        }
        Optional<YamlFault> quote = marked.getContextMark().filter(mark -> isQuote(text, mark)).map(mark -> unclosed("quote", mark));
        return quote.or(() -> bracket.map(mark -> unclosed("bracket", mark)));
    }

    private static YamlFault unclosed(String what, Mark opened) {
        return new YamlFault(place(opened), "the " + what + " that opens here is never closed", "add the " + what + " that closes it");
    }

    private static boolean isQuote(String text, Mark mark) {
        int offset = text.offsetByCodePoints(0, mark.getIndex());
        return offset < text.length() && QUOTES.indexOf(text.charAt(offset)) >= 0;
    }

    private static boolean isBetween(String parserSays) {
        return parserSays.contains("flow mapping") || parserSays.contains("flow sequence");
    }

    private static boolean endsEarly(String parserSays) {
        return parserSays.contains("end of stream") || parserSays.contains("<stream end>");
    }

    /** A colon with no space behind it, in the last line above that says anything or else in this one: the name goes on as a text there, into the next line. */
    private static Optional<YamlFault> stuck(String text, int line) {
        List<String> lines = text.lines().limit(line).toList();
        int above = Math.min(line, lines.size()) - 1;
        while (above > 0 && lines.get(above - 1).isBlank()) {
            above--;
        }
        return stuckIn(lines, above).or(() -> stuckIn(lines, line));
    }

    private static Optional<YamlFault> stuckIn(List<String> lines, int line) {
        Matcher stuck = STUCK.matcher(line > 0 && line <= lines.size() ? lines.get(line - 1) : "");
        return stuck.matches()
                ? Optional.of(new YamlFault(new Place(line, stuck.end(1) + 1), "no space stands behind the colon of " + Words.shortened(stuck.group(2)),
                        "write " + Words.shortened(stuck.group(2) + ": " + stuck.group(3))))
                : Optional.empty();
    }

    /** An escape for a number that no character has, which stands at an index of a text or behind it. */
    static YamlFault escaped(String text, int from) {
        Matcher escape = BEYOND.matcher(text);
        int offset = escape.find(Math.min(from, text.length())) ? escape.start() : Math.min(from, text.length());
        return new YamlFault(new PlaceFinder(text).at(offset), what("escape"), remedy("escape"));
    }

    private static String what(String parserSays) {
        if (parserSays.contains("\\t") || parserSays.contains("TAB")) {
            return "a tab stands where YAML wants spaces";
        } else if (parserSays.contains("mapping values are not allowed")) {
            return "a colon stands where no property can begin";
        } else if (endsEarly(parserSays)) {
            return "the document ends before everything in it is closed";
        } else if (parserSays.contains("expected <block end>") || parserSays.contains("block mapping") || parserSays.contains("block sequence")
                || parserSays.contains("block collection")) {
            return "this line does not fit the indentation or the list above it";
        } else if (isBetween(parserSays)) {
            return "a comma or a closing bracket is missing before this";
        } else if (parserSays.contains("could not find expected ':'") || parserSays.contains("simple key")) {
            return "a colon is missing behind a name";
        } else if (parserSays.contains("escape")) {
            return "a text between double quotes holds a backslash that means nothing";
        }
        return "this is not YAML: the parser cannot go on here";
    }

    private static String remedy(String parserSays) {
        if (parserSays.contains("\\t") || parserSays.contains("TAB")) {
            return "indent with spaces";
        } else if (parserSays.contains("mapping values are not allowed")) {
            return "put a text that holds ': ' between quotes, or correct the indentation";
        } else if (endsEarly(parserSays)) {
            return "add the missing quote or bracket";
        } else if (parserSays.contains("escape")) {
            return "write a backslash itself as \\\\, or use single quotes";
        } else if (parserSays.contains("cannot start any token")) {
            return "put the text between quotes";
        }
        return "correct this line or the one before; align entries of one level, and put texts with special characters between quotes";
    }
}
