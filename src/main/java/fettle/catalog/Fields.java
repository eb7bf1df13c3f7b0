package fettle.catalog;

import fettle.document.Node;
import fettle.document.Origin;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads an object's properties leniently: what is missing or of the wrong type reads as absent, since the schema check reports it
 * and the rest of the entry is still worth checking. So does a text with nothing in it, and a name of blanks alone.
 */
record Fields(Node.Obj object) {

    /** A text with its place. */
    record Word(String text, Origin origin) {}

    static Optional<Fields> of(Node node) {
        return node instanceof Node.Obj object ? Optional.of(new Fields(object)) : Optional.empty();
    }

    Origin origin() {
        return object.origin();
    }

    Optional<Node> value(String name) {
        return Optional.ofNullable(object.members().get(name)).map(Node.Member::value);
    }

    /** A name of something. */
    Optional<Word> word(String name) {
        return value(name).flatMap(Fields::word);
    }

    private static Optional<Word> word(Node node) {
        return node instanceof Node.Text text && !text.value().isBlank() ? Optional.of(new Word(text.value(), text.origin())) : Optional.empty();
    }

    private static Optional<String> text(Node node) {
        return node instanceof Node.Text text && !text.value().isEmpty() ? Optional.of(text.value()) : Optional.empty();
    }

    private static Optional<Word> written(Node node) {
        return node instanceof Node.Text text ? Optional.of(new Word(text.value(), text.origin())) : Optional.empty();
    }

    Optional<String> text(String name) {
        return value(name).flatMap(Fields::text);
    }

    /** A text that may be empty: what it is the name of is there all the same. */
    Optional<Word> written(String name) {
        return value(name).flatMap(Fields::written);
    }

    Optional<BigDecimal> decimal(String name) {
        return value(name).flatMap(Fields::decimal);
    }

    /** A sum of money; what is below nothing is none, as the schema has it. */
    Optional<BigDecimal> amount(String name) {
        return decimal(name).filter(sum -> sum.signum() >= 0);
    }

    static Optional<BigDecimal> decimal(Node node) {
        return node instanceof Node.Num number ? Optional.of(number.value()) : Optional.empty();
    }

    OptionalInt whole(String name) {
        return decimal(name).map(Fields::whole).orElse(OptionalInt.empty());
    }

    /** A whole number within bounds; one out of them counts as not written, as the schema has it. */
    OptionalInt whole(String name, int least, int most) {
        OptionalInt number = whole(name);
        return number.isPresent() && number.getAsInt() >= least && number.getAsInt() <= most ? number : OptionalInt.empty();
    }

    static OptionalInt whole(BigDecimal number) {
        try {
            return OptionalInt.of(number.intValueExact());
        } catch (ArithmeticException notWhole) {
            return OptionalInt.empty();
        }
    }

    boolean flag(String name, boolean otherwise) {
        return value(name).map(node -> node instanceof Node.Bool bool ? bool.value() : otherwise).orElse(otherwise);
    }

    List<Node> items(String name) {
        return value(name).map(Fields::items).orElse(List.of());
    }

    static List<Node> items(Node node) {
        return node instanceof Node.Arr array ? array.items() : List.of();
    }

    List<Word> words(String name) {
        return value(name).map(Fields::words).orElse(List.of());
    }

    /** The names in a list. */
    static List<Word> words(Node node) {
        List<Word> words = new ArrayList<>();
        items(node).forEach(item -> word(item).ifPresent(words::add));
        return words;
    }

    /** What a list of texts holds, each once; nothing where it is no such list. */
    static Optional<List<String>> texts(Node node) {
        List<String> texts = new ArrayList<>();
        items(node).forEach(item -> text(item).ifPresent(texts::add));
        return node instanceof Node.Arr list && list.items().size() == texts.size() ? Optional.of(texts.stream().distinct().toList()) : Optional.empty();
    }

    /** Whether a list holds something that is no name, so that it says more than could be read. */
    static boolean lacking(Node node) {
        return items(node).size() > words(node).size();
    }

    /** The goods given for something, each with its count. */
    List<Barter> bartered(String name) {
        List<Barter> bartered = new ArrayList<>();
        items(name).forEach(node -> Fields.of(node).ifPresent(item -> item.text("good").ifPresent(good ->
                item.decimal("count").ifPresent(count -> bartered.add(new Barter(good, count, item.origin()))))));
        return List.copyOf(bartered);
    }

    /** The members of an object property, in the order written. */
    List<Pair> pairs(String name) {
        return value(name).flatMap(Fields::of).map(Fields::pairs).orElse(List.of());
    }

    /** The same, without those whose key names nothing. */
    List<Pair> named(String name) {
        return pairs(name).stream().filter(pair -> !pair.key().isBlank()).toList();
    }

    private List<Pair> pairs() {
        List<Pair> pairs = new ArrayList<>();
        object.members().forEach((key, member) -> pairs.add(new Pair(key, member.key(), member.value())));
        return pairs;
    }

    /** One member of an object used as a map. */
    record Pair(String key, Origin origin, Node value) {}
}
