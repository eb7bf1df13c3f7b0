package fettle.space;

import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.document.Origin;
import fettle.relation.Clause;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A part or platform with which nothing can stand of all that would meet one of its needs, that fits one of its slots, or that could carry it.
 *
 * @param asked what is ruled out, in words that follow "all that"
 * @param others the parts ruled out, in order
 * @param place the first entry that rules out
 * @param because the entries that ask, then those that rule out
 */
public record SelfConflict(Part part, String asked, List<String> others, Origin place, List<Fact> because) {

    public SelfConflict {
        others = List.copyOf(others);
        because = List.copyOf(because);
    }

    /** All such conflicts; one between a part and the only slot it fits is told of the slot's host alone. */
    static List<SelfConflict> of(Relations relations, Terrain terrain) {
        return new Search(relations, terrain).all();
    }

    private static final class Search {

        private static final int SLOTS_TOLD = 3;

        private final Relations relations;
        private final Terrain terrain;
        private final Clashes clashes;
        private final List<SelfConflict> found = new ArrayList<>();

        Search(Relations relations, Terrain terrain) {
            this.relations = relations;
            this.terrain = terrain;
            this.clashes = new Clashes(relations);
        }

        List<SelfConflict> all() {
            relations.clauses().stream().filter(clause -> clause.when().size() == 1 && !clause.need().isEmpty()).forEach(this::need);
            Set<Integer> dead = new LinkedHashSet<>();
            List<List<Integer>> homes = new ArrayList<>();
            for (int part = 0; part < terrain.parts(); part++) {
                homes.add(new ArrayList<>());
            }
            for (int slot = 0; slot < terrain.slots().size(); slot++) {
                for (int part : terrain.candidates()[slot]) {
                    homes.get(part).add(slot);
                }
                if (slot(slot)) {
                    dead.add(slot);
                }
            }
            for (int part = 0; part < terrain.parts(); part++) {
                if (!dead.containsAll(homes.get(part))) {
                    hosts(part, homes.get(part));
                }
            }
            return found;
        }

        /** Whoever meets the clause's one term rules out whatever would answer it. */
        private void need(Clause clause) {
            SortedSet<String> serving = new TreeSet<>();
            clause.need().forEach(term -> serving.addAll(relations.members(term).keySet()));
            for (String part : relations.members(clause.when().get(0)).keySet()) {
                if (clause.apart() || !serving.contains(part)) {
                    ruledOut(part, serving).ifPresent(because -> add(part, "would meet its need", serving, clause.because(), because));
                }
            }
        }

        /** The host rules out whatever fits a slot of its own, or blocks it. */
        private boolean slot(int slot) {
            SlotId id = terrain.slots().get(slot);
            List<String> candidates = names(terrain.candidates()[slot]);
            Optional<List<Fact>> because = candidates.isEmpty() ? Optional.empty() : clashes.of(id.host(), id).or(() -> ruledOut(id.host(), candidates));
            because.ifPresent(facts -> add(id.host(), "fits its slot " + id.slot(), candidates, relations.slot(id).stream().toList(), facts));
            return because.isPresent();
        }

        /** The part rules out every host that could carry it. */
        private void hosts(int part, List<Integer> homes) {
            SortedSet<String> hosts = new TreeSet<>();
            homes.forEach(slot -> hosts.add(terrain.slots().get(slot).host()));
            String id = terrain.hosts().get(part);
            List<Fact> slots = homes.stream().limit(SLOTS_TOLD).<Fact>map(slot -> relations.slot(terrain.slots().get(slot)).orElseThrow()).toList();
            ruledOut(id, hosts).ifPresent(because -> add(id, "could carry it", hosts, slots, because));
        }

        /** The reasons why none of these can stand with the part; empty where one can, or where there are none. */
        private Optional<List<Fact>> ruledOut(String part, Iterable<String> others) {
            FactList because = new FactList();
            for (String other : others) {
                Optional<List<Fact>> clash = clashes.between(part, other);
                if (clash.isEmpty()) {
                    return Optional.empty();
                }
                because.addAll(clash.get());
            }
            return Optional.of(because.list()).filter(facts -> !facts.isEmpty());
        }

        private List<String> names(int[] parts) {
            List<String> names = new ArrayList<>();
            for (int part : parts) {
                names.add(terrain.hosts().get(part));
            }
            return names;
        }

        private void add(String part, String asked, Iterable<String> others, List<? extends Fact> asking, List<Fact> ruling) {
            List<String> all = new ArrayList<>();
            others.forEach(all::add);
            List<Fact> because = new FactList().addAll(asking).addAll(ruling).list();
            found.add(new SelfConflict(relations.catalog().host(part).orElseThrow(), asked, all, ruling.get(0).origin(), because));
        }
    }
}
