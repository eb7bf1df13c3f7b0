package fettle.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Words what a piece of a schema asks for, so as to follow "expected". A title in the schema is such wording already. */
final class Expectation {
    private static final Pattern ID = Pattern.compile("[a-z0-9][a-z0-9._-]*");
    private static final Pattern NAME = Pattern.compile("[\\w:./-]{1,60}");

    private Expectation() {}

    static String of(Node schema) {
        return NodePaths.text(schema, "title").orElseGet(() -> {
            List<String> choices = choices(schema);
            return choices.isEmpty() ? number(schema) : Words.anyOf(choices.stream().map(Words::quoted).toList());
        });
    }

    /** What the schema asks for, with a hint where a value of the wrong type shows which slip it was. */
    static String ofType(Node schema, Node found) {
        String expected = of(schema);
        Set<String> types = types(schema);
        if (found instanceof Node.Text text && isNumeric(types) && Decimals.read(text.value()).isPresent()) {
            return expected + ", without quotes";
        } else if (found instanceof Node.Text text && isNumeric(types) && commas(text, types).isPresent()) {
            return expected + commas(text, types).get();
        } else if (found instanceof Node.Text text && types.equals(Set.of("boolean")) && truth(text.value()).isPresent()) {
            return expected + truth(text.value()).get();
        } else if (found instanceof Node.Text text && types.equals(Set.of("array")) && NAME.matcher(text.value()).matches()) {
            return expected + ", between brackets: [\"" + text.value() + "\"]";
        } else if ((found instanceof Node.Num || found instanceof Node.Bool) && types.equals(Set.of("string"))) {
            return expected + ", in quotes";
        } else if (types.equals(Set.of("object")) && !expected.contains("object")) {
            return expected + ", as an object" + (found instanceof Node.Text text && needsIdAlone(schema) && ID.matcher(text.value()).matches()
                    ? " such as { id: " + text.value() + " }" : "");
        }
        return expected;
    }

    /** What to write in place of a word for a truth value that is a text here. */
    private static Optional<String> truth(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "true", "false" -> Optional.of(", without quotes");
            case "yes", "on", "y" -> Optional.of(", here true");
            case "no", "off", "n" -> Optional.of(", here false");
            default -> Optional.empty();
        };
    }

    /** What to write in place of a number with commas. */
    private static Optional<String> commas(Node.Text text, Set<String> types) {
        return CommaNumber.of(text.value()).flatMap(number -> types.contains("number") ? Optional.of(number) : number.whole())
                .map(number -> (number.thousands().isEmpty() ? ", with a point: " : number.decimal().isEmpty() ? ", without a comma: " : ", written ") + number.readings());
    }

    private static boolean needsIdAlone(Node schema) {
        return NodePaths.member(schema, "required").orElse(schema) instanceof Node.Arr required
                && required.items().stream().map(name -> ((Node.Text) name).value()).toList().equals(List.of("id"));
    }

    /** The texts that an enumeration allows; none where there is no enumeration. */
    static List<String> choices(Node schema) {
        List<String> choices = new ArrayList<>();
        if (NodePaths.member(schema, "enum").orElse(schema) instanceof Node.Arr list) {
            for (Node choice : list.items()) {
                choices.add(((Node.Text) choice).value());
            }
        }
        return choices;
    }

    private static Set<String> types(Node schema) {
        Optional<Node> type = NodePaths.member(schema, "type");
        if (type.orElse(schema) instanceof Node.Text one) {
            return Set.of(one.value());
        }
        List<String> names = new ArrayList<>();
        if (type.orElse(schema) instanceof Node.Arr several) {
            several.items().forEach(name -> names.add(((Node.Text) name).value()));
        }
        return Set.copyOf(names);
    }

    /** Whether the schema allows values of more than one type. */
    static boolean isOfSeveralTypes(Node schema) {
        return types(schema).size() > 1;
    }

    private static boolean isNumeric(Set<String> types) {
        return types.contains("number") || types.contains("integer");
    }

    private static String number(Node schema) {
        Set<String> types = types(schema);
        if (types.contains("boolean")) {
            return "true or false";
        } else if (!isNumeric(types)) {
            return "a text";
        }
        String noun = types.contains("integer") ? "a whole number" : "a number";
        Optional<String> least = bound(schema, "minimum");
        Optional<String> most = bound(schema, "maximum");
        Optional<String> above = bound(schema, "exclusiveMinimum");
        if (least.isPresent() && most.isPresent()) {
            return noun + " from " + least.get() + " to " + most.get();
        } else if (least.isPresent()) {
            return noun + " of at least " + least.get();
        }
        return above.map(bound -> noun + " above " + bound).orElse(noun);
    }

    private static Optional<String> bound(Node schema, String name) {
        return NodePaths.member(schema, name).map(bound -> ((Node.Num) bound).value().toPlainString());
    }
}
