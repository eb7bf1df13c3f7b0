package fettle.view;

import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Value;
import java.util.ArrayList;
import java.util.List;

/** Puts differences between two catalogs into words, without a full stop. */
final class ChangeWording {

    private static final String OR = " or ";

    private ChangeWording() {}

    /** The entry and what became of it. */
    static String sentence(Change change) {
        String entry = entry(change.entry());
        if (change.whole()) {
            return entry + (change.added() ? " is new" : " is gone");
        }
        return entry + ": " + property(change);
    }

    /** {@code part x}. */
    static String entry(EntryName name) {
        return name.section().equals("catalog") ? "the catalog" : name.subject().replaceFirst(":", " ");
    }

    /** A property and what became of it. */
    static String property(Change change) {
        String what = change.what();
        if (change.added() || change.removed()) {
            Value value = change.to().or(change::from).orElseThrow();
            if (value.several() && !named(change)) {
                return what + (change.added() ? " gained " : " lost ") + all(value.texts());
            }
            return what + (change.added() ? " is new" : " is gone") + (value.texts().isEmpty() ? "" : ": " + value.text());
        }
        Value from = change.from().orElseThrow();
        Value to = change.to().orElseThrow();
        return from.several() && to.several() ? what + " " + exchanged(from.texts(), to.texts()) : what + " from " + from.text() + " to " + to.text();
    }

    /** Whether it is a slot or an offer as a whole. */
    private static boolean named(Change change) {
        return change.path().size() == 2 && (change.property().equals("slots") || change.property().equals("offers"));
    }

    private static String exchanged(List<String> from, List<String> to) {
        List<String> gone = new ArrayList<>(from);
        gone.removeAll(to);
        List<String> come = new ArrayList<>(to);
        come.removeAll(from);
        if (gone.isEmpty() && come.isEmpty()) {
            return "in another order: " + String.join(", ", to);
        }
        List<String> says = new ArrayList<>();
        if (!gone.isEmpty()) {
            says.add("lost " + all(gone));
        }
        if (!come.isEmpty()) {
            says.add("gained " + all(come));
        }
        return String.join(" and ", says);
    }

    /** All of them; those that are choices among several stand in brackets beside others. */
    private static String all(List<String> texts) {
        return Phrases.and(Phrases.each(texts, text -> texts.size() > 1 && text.contains(OR) ? "(" + text + ")" : text));
    }
}
