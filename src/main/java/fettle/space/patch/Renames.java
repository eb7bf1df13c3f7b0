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
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Guesses which parts and platforms were renamed. The evidence must be strong: the same kind, at most one property in {@value #ONE_IN} different, ids
 * or labels alike (or no difference at all), and no second candidate as good on either side. Of what that leaves, one that was renamed and reworked at
 * once: the same kind, the same mounts or slots, the same label or an id as near as that of a name misspelt, and no second candidate at all.
 */
final class Renames {

    private static final int ONE_IN = 6;
    private static final int LEAST_EQUAL = 2;

    /** An entry that only one side has, with what counts as evidence. */
    private record Candidate(EntryName name, String kind, String label, boolean labelled, Set<String> hanging, Map<String, Value> said) {}

    private static final Comparator<Rename> BEST = Comparator.comparingInt(Rename::differing)
            .thenComparing(Rename::labelled, Comparator.reverseOrder())
            .thenComparing(Rename::namesNear, Comparator.reverseOrder())
            .thenComparing(Rename::equal, Comparator.reverseOrder());

    private Renames() {}

    static List<Rename> guessed(WrittenCatalog old, WrittenCatalog now) {
        Map<String, List<Candidate>> gone = candidates(old, now);
        Map<String, List<Candidate>> come = candidates(now, old);
        List<Rename> guesses = new ArrayList<>();
        List<Rename> reworked = new ArrayList<>();
        gone.forEach((kind, removed) -> removed.forEach(from -> come.getOrDefault(kind, List.of()).forEach(to -> compare(from, to, guesses, reworked))));
        Stream<Rename> left = reworked.stream()
                .filter(guess -> reworked.stream().filter(other -> shares(guess, other)).count() == 1 && guesses.stream().noneMatch(other -> shares(guess, other)));
        return Stream.concat(guesses.stream().filter(guess -> alone(guess, guesses)), left)
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
        Optional<String> label = WrittenCatalog.text(object, "label");
        return new Candidate(name, WrittenCatalog.text(object, "kind").orElse(""), label.orElse(name.id()), label.isPresent(), hanging(name, object), said);
    }

    /** Holds two entries against each other as if they were one. Nearness takes longest, so it is asked for last. */
    private static void compare(Candidate from, Candidate to, List<Rename> guesses, List<Rename> reworked) {
        int equal = (int) from.said.entrySet().stream().filter(entry -> entry.getValue().equals(to.said.get(entry.getKey()))).count();
        int paired = (int) from.said.keySet().stream().filter(to.said::containsKey).count() - equal;
        int differing = from.said.size() + to.said.size() - 2 * equal - paired;
        boolean strong = equal >= LEAST_EQUAL && differing * ONE_IN <= equal + differing;
        boolean labelled = equal > 0 && from.labelled && from.label.equals(to.label);
        // Where as much differs as is the same, a near id says little, and so does one that differs by a figure: mark-1 is no misspelt mark-2.
        boolean likely = equal > differing && figures(from.name.id()).equals(figures(to.name.id()));
        boolean loose = from.hanging.equals(to.hanging) && (labelled || likely);
        if (!strong && !loose) {
            return;
        }
        boolean near = near(from.name.id(), to.name.id());
        Rename rename = new Rename(from.name, to.name, equal, differing, from.labelled && from.label.equals(to.label), near || near(from.label, to.label), List.of());
        if (strong && (rename.namesNear() || differing == 0)) {
            guesses.add(rename);
        }
        if (loose && (labelled || near)) {
            reworked.add(rename);
        }
    }

    private static String figures(String id) {
        return id.replaceAll("[^0-9]", "");
    }

    /** What it hangs by: the mounts of a part, the slots of a platform. */
    private static Set<String> hanging(EntryName name, Node.Obj object) {
        boolean platform = name.section().equals("platforms");
        Set<String> hanging = new TreeSet<>();
        Statements.of(object).forEach((path, statement) -> {
            if (platform && statement.heading() && path.size() == 2 && path.get(0).equals("slots")) {
                hanging.add(path.get(1));
            } else if (!platform && path.equals(List.of("mounts"))) {
                hanging.addAll(statement.value().texts());
            }
        });
        return hanging;
    }

    private static boolean near(String one, String other) {
        return one.equals(other) || !Nearest.names(one, List.of(other)).isEmpty();
    }

    /** Whether no other guess about either entry is as good. */
    private static boolean alone(Rename guess, List<Rename> guesses) {
        return guesses.stream()
                .filter(other -> other != guess && shares(guess, other))
                .allMatch(other -> BEST.compare(guess, other) < 0);
    }

    private static boolean shares(Rename one, Rename other) {
        return one.from().equals(other.from()) || one.to().equals(other.to());
    }

    private static Rename detailed(Rename guess, WrittenCatalog old, WrittenCatalog now) {
        Node.Obj before = old.entry(guess.from()).orElseThrow();
        Node.Obj after = WrittenCatalog.aligned(before, now.entry(guess.to()).orElseThrow());
        List<Change> changes = CatalogChanges.between(guess.to(), before, after);
        return new Rename(guess.from(), guess.to(), guess.equal(), guess.differing(), guess.labelled(), guess.namesNear(), changes);
    }
}
