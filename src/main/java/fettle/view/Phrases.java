package fettle.view;

import fettle.catalog.Selector;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;

/** Small turns of phrase that sentences are made of. */
final class Phrases {

    /** How many items a sentence lists before it only counts the rest. */
    private static final int MOST_LISTED = 12;

    private Phrases() {}

    /** {@code a, b and c}. */
    static String and(Collection<String> items) {
        return joined(items, "and");
    }

    /** {@code a, b or c}. */
    static String or(Collection<String> items) {
        return joined(items, "or");
    }

    static String joined(Collection<String> items, String last) {
        List<String> all = List.copyOf(items);
        if (all.size() > MOST_LISTED) {
            return String.join(", ", all.subList(0, MOST_LISTED - 1)) + " " + last + " " + (all.size() - MOST_LISTED + 1) + " more";
        }
        if (all.size() < 2) {
            return String.join("", all);
        }
        return String.join(", ", all.subList(0, all.size() - 1)) + " " + last + " " + all.get(all.size() - 1);
    }

    /** What has commas and "and" of its own: {@code a and b in c; d in e}. */
    static String apart(List<String> items) {
        return items.size() > MOST_LISTED
                ? String.join("; ", items.subList(0, MOST_LISTED - 1)) + "; and " + (items.size() - MOST_LISTED + 1) + " more"
                : String.join("; ", items);
    }

    /** An id with the label that people know it by. */
    static String named(String id, String label) {
        return label.equals(id) ? id : id + " \"" + label + "\"";
    }

    static <T> List<String> each(Collection<T> items, Function<T, String> word) {
        return items.stream().map(word).toList();
    }

    /** {@code 1 part}, {@code 2 parts}, {@code no parts}. */
    static String count(long number, String one, String several) {
        return (number == 0 ? "no" : Long.toString(number)) + " " + (number == 1 ? one : several);
    }

    /** All parts that a selector names. */
    static String every(String selector) {
        return selected(selector, "parts of kind ", "parts tagged ");
    }

    /** One part that a selector names. */
    static String one(String selector) {
        return selected(selector, "a part of kind ", "a part tagged ");
    }

    static String one(Selector selector) {
        return one(selector.text());
    }

    private static String selected(String text, String kind, String tag) {
        Selector selector = new Selector(text, fettle.document.Origin.startOf(""));
        return switch (selector.section()) {
            case "kinds" -> kind + selector.target();
            case "tags" -> tag + selector.target();
            default -> text;
        };
    }
}
