package fettle.space.patch;

import fettle.document.Nearest;
import fettle.document.Node;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Value;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Guesses which parts and platforms were renamed. The evidence must be strong: the same kind, at most one property in {@value #ONE_IN} different, ids
 * or labels alike (or no difference at all), and no second candidate as good on either side.
 */
final class Renames {

    private static final int ONE_IN = 6;
    private static final int LEAST_EQUAL = 2;

    /** An entry that only one side has, with what counts as evidence. */
    private record Candidate(EntryName name, Node.Obj object, String kind, String label, Map<String, Value> said) {}

    private static final Comparator<Rename> BEST = Comparator.comparingInt(Rename::differing)
            .thenComparing(Rename::namesNear, Comparator.reverseOrder())
            .thenComparing(Rename::equal, Comparator.reverseOrder());

    private Renames() {}

    static List<Rename> guessed(WrittenCatalog old, WrittenCatalog now) {
        Map<String, List<Candidate>> gone = candidates(old, now);
        Map<String, List<Candidate>> come = candidates(now, old);
        List<Rename> guesses = new ArrayList<>();
        gone.forEach((kind, removed) -> removed.forEach(from -> come.getOrDefault(kind, List.of()).forEach(to -> guess(from, to).ifPresent(guesses::add))));
        return guesses.stream()
                .filter(guess -> alone(guess, guesses))
                .sorted(Comparator.comparing(Rename::from))
                .map(guess -> detailed(guess, old, now))
                .toList();
    }

    /** The parts and platforms that only this side has, by section and kind. */
    private static Map<String, List<Candidate>> candidates(WrittenCatalog side, WrittenCatalog other) {
        Map<String, List<Candidate>> found = new TreeMap<>();
        side.entries().forEach((name, object) -> {
            if (name.host() && other.entry(name).isEmpty()) {
                Candidate candidate = candidate(name, object);
                found.computeIfAbsent(name.section() + " " + candidate.kind, unused -> new ArrayList<>()).add(candidate);
            }
        });
        return found;
    }

    private static Candidate candidate(EntryName name, Node.Obj object) {
        Map<String, Value> said = new HashMap<>();
        Statements.of(object).values().forEach(statement -> {
            String property = statement.path().get(0);
            if (!statement.heading() && !property.equals("kind") && !property.equals("label") && !property.equals(WrittenCatalog.OFFERS)) {
                said.put(String.join(".", statement.path()), statement.value());
            }
        });
        return new Candidate(name, object, WrittenCatalog.text(object, "kind").orElse(""), WrittenCatalog.text(object, "label").orElse(name.id()), said);
    }

    private static Optional<Rename> guess(Candidate from, Candidate to) {
        int equal = (int) from.said.entrySet().stream().filter(entry -> entry.getValue().equals(to.said.get(entry.getKey()))).count();
        int differing = from.said.size() + to.said.size() - 2 * equal;
        long paired = from.said.keySet().stream().filter(to.said::containsKey).count() - equal;
        differing -= (int) paired;
        if (equal < LEAST_EQUAL || differing * ONE_IN > equal + differing) {
            return Optional.empty();
        }
        boolean near = near(from.name.id(), to.name.id()) || near(from.label, to.label);
        return near || differing == 0 ? Optional.of(new Rename(from.name, to.name, equal, differing, near, List.of())) : Optional.empty();
    }

    private static boolean near(String one, String other) {
        return one.equals(other) || !Nearest.names(one, List.of(other)).isEmpty();
    }

    /** Whether no other guess about either entry is as good. */
    private static boolean alone(Rename guess, List<Rename> guesses) {
        return guesses.stream()
                .filter(other -> other != guess && (other.from().equals(guess.from()) || other.to().equals(guess.to())))
                .allMatch(other -> BEST.compare(guess, other) < 0);
    }

    private static Rename detailed(Rename guess, WrittenCatalog old, WrittenCatalog now) {
        Node.Obj before = old.entry(guess.from()).orElseThrow();
        Node.Obj after = WrittenCatalog.aligned(before, now.entry(guess.to()).orElseThrow());
        List<Change> changes = CatalogChanges.between(guess.to(), before, after);
        return new Rename(guess.from(), guess.to(), guess.equal(), guess.differing(), guess.namesNear(), changes);
    }
}
