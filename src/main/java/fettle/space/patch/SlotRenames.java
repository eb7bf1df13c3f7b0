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
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Guesses which slots were renamed. A host lost one and gained another that takes the same (the same mounts, and what it accepts and rejects), they
 * differ in one thing more at most, and no second slot is as good on either side.
 */
final class SlotRenames {

    private static final String SLOTS = "slots";
    private static final String LABEL = "label";
    private static final Set<String> TAKING = Set.of("mounts", "accepts", "rejects");

    /** Two slots of one host, as if they were one. */
    private record Pair(String from, String to, int differing, boolean labelled, boolean near) {

        private static final Comparator<Pair> BEST = Comparator.comparingInt(Pair::differing)
                .thenComparing(Pair::labelled, Comparator.reverseOrder())
                .thenComparing(Pair::near, Comparator.reverseOrder());

        boolean shares(Pair other) {
            return from.equals(other.from) || to.equals(other.to);
        }
    }

    private SlotRenames() {}

    /**
     * Those of hosts that both catalogs have, by the same id or by one that was probably renamed.
     *
     * @param changes the differences between the catalogs
     */
    static List<SlotRename> guessed(WrittenCatalog old, WrittenCatalog now, List<Change> changes, List<Rename> renames) {
        SortedMap<EntryName, List<Change>> byHost = new TreeMap<>();
        changes.stream().filter(change -> change.entry().host() && slot(change)).forEach(change -> byHost.computeIfAbsent(change.entry(), unused -> new ArrayList<>()).add(change));
        List<SlotRename> guesses = new ArrayList<>();
        byHost.forEach((host, slots) -> guesses.addAll(of(host, host, slots, old, now)));
        renames.stream().filter(rename -> rename.from().host()).forEach(rename ->
                guesses.addAll(of(rename.from(), rename.to(), rename.changes().stream().filter(SlotRenames::slot).toList(), old, now)));
        return guesses.stream().sorted(Comparator.comparing(SlotRename::host).thenComparing(SlotRename::from)).toList();
    }

    /** Whether a difference is a slot that only one side has. */
    private static boolean slot(Change change) {
        return change.path().size() == 2 && change.property().equals(SLOTS) && (change.added() || change.removed());
    }

    private static List<SlotRename> of(EntryName from, EntryName to, List<Change> slots, WrittenCatalog old, WrittenCatalog now) {
        List<String> gone = slots.stream().filter(Change::removed).map(change -> change.path().get(1)).toList();
        List<String> come = slots.stream().filter(Change::added).map(change -> change.path().get(1)).toList();
        Optional<Node.Obj> before = old.entry(from);
        Optional<Node.Obj> after = now.entry(to);
        if (gone.isEmpty() || come.isEmpty() || before.isEmpty() || after.isEmpty()) {
            return List.of();
        }
        List<Pair> pairs = new ArrayList<>();
        gone.forEach(one -> come.forEach(other -> pair(one, said(before.get(), one), other, said(after.get(), other)).ifPresent(pairs::add)));
        return pairs.stream()
                .filter(pair -> pairs.stream().allMatch(other -> other == pair || !pair.shares(other) || Pair.BEST.compare(pair, other) < 0))
                .map(pair -> new SlotRename(to, from.id(), pair.from, pair.to))
                .toList();
    }

    private static Optional<Pair> pair(String from, Map<String, Value> said, String to, Map<String, Value> says) {
        Set<String> all = new TreeSet<>(said.keySet());
        all.addAll(says.keySet());
        List<String> differing = all.stream().filter(property -> !property.equals(LABEL) && !Objects.equals(said.get(property), says.get(property))).toList();
        boolean takes = TAKING.stream().anyMatch(said::containsKey) && differing.stream().noneMatch(TAKING::contains);
        boolean labelled = said.containsKey(LABEL) && said.get(LABEL).equals(says.get(LABEL));
        return takes && differing.size() < 2
                ? Optional.of(new Pair(from, to, differing.size(), labelled, !Nearest.names(from, List.of(to)).isEmpty())) : Optional.empty();
    }

    /** What a host says of one of its slots. */
    private static Map<String, Value> said(Node.Obj host, String slot) {
        Map<String, Value> said = new HashMap<>();
        Statements.of(host).forEach((path, statement) -> {
            if (path.size() > 2 && path.get(0).equals(SLOTS) && path.get(1).equals(slot)) {
                said.put(String.join(".", path.subList(2, path.size())), statement.value());
            }
        });
        return said;
    }
}
