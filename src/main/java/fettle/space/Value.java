package fettle.space;

import java.util.Comparator;
import java.util.List;

/**
 * What an entry states under one property, in a form that is equal for what means the same: decimals without trailing zeros, and lists in which
 * order says nothing sorted.
 *
 * @param several whether the property is a list, or a whole made up of several statements
 */
public record Value(List<String> texts, boolean several) implements Comparable<Value> {

    private static final Comparator<Value> ORDER = Comparator.comparing(Value::text).thenComparing(Value::several);

    public Value {
        texts = List.copyOf(texts);
    }

    /** A single text, decimal or truth value. */
    public static Value one(String text) {
        return new Value(List.of(text), false);
    }

    /** A list. */
    public static Value list(List<String> texts) {
        return new Value(texts, true);
    }

    /** For people: the texts, joined by commas. */
    public String text() {
        return String.join(", ", texts);
    }

    @Override
    public int compareTo(Value other) {
        return ORDER.compare(this, other);
    }
}
