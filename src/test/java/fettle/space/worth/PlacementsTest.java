package fettle.space.worth;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.space.Catalogs;
import fettle.space.Landscape;
import fettle.space.RandomCatalog;
import fettle.space.Space;
import fettle.space.worth.Lots.Lot;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Placements are all partial matchings between slots, once for each pair of what is kept and what is left to fill. */
class PlacementsTest {

    private static final Measure MEASURE = measure();

    private static Measure measure() {
        String json = RandomCatalog.json(new Random(1), 8);
        Landscape landscape = Space.of(Catalogs.relations(json)).landscape(Catalogs.relations(json).catalog().platforms().keySet());
        return Measure.ignoringCost(landscape.relations().catalog(), landscape.terrain());
    }

    /** What is kept, and the slots left to fill by the first that holds the same. */
    private record Way(Set<Integer> kept, List<Integer> left) {}

    @Property(tries = 300)
    void every_way_of_keeping_and_filling_is_there_once(@ForAll @IntRange(max = 4) int mine, @ForAll @IntRange(max = 4) int theirs, @ForAll long seed) {
        Random random = new Random(seed);
        List<Cluster> kinds = List.of(cluster(), cluster(), cluster());
        List<Lot> own = IntStream.range(0, mine).mapToObj(i -> lot(i, kinds.get(random.nextInt(3)))).toList();
        List<Lot> other = IntStream.range(0, theirs).mapToObj(j -> lot(10 + j, kinds.get(random.nextInt(3)))).toList();
        Set<List<Integer>> taken = new HashSet<>();
        own.forEach(one -> other.stream().filter(into -> random.nextInt(3) > 0).forEach(into -> taken.add(List.of(one.slot(), into.slot()))));
        List<Way> found = new Placements(own, other, (one, into) -> taken.contains(List.of(one.slot(), into.slot()))).all().stream()
                .map(places -> way(places, other)).toList();
        Set<Way> expected = new HashSet<>();
        matchings(own, other, taken, new ArrayList<>(), expected);
        assertEquals(expected, new HashSet<>(found));
        assertEquals(expected.size(), found.size());
    }

    private static Cluster cluster() {
        return new Cluster(MEASURE, List.of(new Cluster.Choice(Cluster.NOTHING, MEASURE.ofNothing())));
    }

    private static Lot lot(int slot, Cluster choices) {
        return new Lot(slot, List.of(), true, choices);
    }

    private static void matchings(List<Lot> own, List<Lot> other, Set<List<Integer>> taken, List<Integer> places, Set<Way> found) {
        if (places.size() == own.size()) {
            found.add(way(places.stream().mapToInt(Integer::intValue).toArray(), other));
            return;
        }
        for (int place = Placements.DROPPED; place < other.size(); place++) {
            if (place == Placements.DROPPED || !places.contains(place) && taken.contains(List.of(own.get(places.size()).slot(), other.get(place).slot()))) {
                List<Integer> longer = new ArrayList<>(places);
                longer.add(place);
                matchings(own, other, taken, longer, found);
            }
        }
    }

    private static Way way(int[] places, List<Lot> other) {
        Set<Integer> kept = new TreeSet<>();
        Set<Integer> into = new HashSet<>();
        for (int i = 0; i < places.length; i++) {
            if (places[i] != Placements.DROPPED) {
                kept.add(i);
                into.add(places[i]);
            }
        }
        List<Integer> left = IntStream.range(0, other.size()).filter(j -> !into.contains(j))
                .map(j -> IntStream.rangeClosed(0, j).filter(first -> other.get(first).choices() == other.get(j).choices()).findFirst().orElseThrow()).sorted().boxed().toList();
        return new Way(kept, left);
    }
}
