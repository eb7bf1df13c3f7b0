package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Lens;
import fettle.catalog.SlotId;
import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.oracle.RandomCatalogs;
import fettle.relation.Relations;
import fettle.space.worth.Middles;
import fettle.space.worth.MiddlesAtRates;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.statistics.Statistics;

/** The parts that are said to lie between rungs everywhere are those that lie so on the ladder of every slot in which they can be bought and placed. */
class MiddlesBruteForceTest {

    @Provide
    static Arbitrary<String> catalogs() {
        return RandomCatalogs.catalogs().map(Object::toString).filter(SmallCatalogs::small);
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void what_lies_between_agrees_with_brute_force(@ForAll("catalogs") String json) {
        agrees(json, landscape -> new Middles(landscape, Optional.empty()));
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void what_lies_between_by_all_sets_of_roles_together_agrees_with_brute_force(@ForAll("catalogs") String json) {
        agrees(json, MiddlesAtRates::of);
    }

    private static void agrees(String json, Function<Landscape, Middles> sought) {
        Entries entries = Entries.of(JsonText.read(json));
        Relations relations = Catalogs.relations(json);
        Landscape landscape = Space.of(relations).landscape(relations.catalog().platforms().keySet());
        Middles middles = sought.apply(landscape);
        for (Lens lens : relations.catalog().lenses().values()) {
            SortedMap<String, List<fettle.oracle.Ladder.Standing>> standings = new TreeMap<>();
            SortedMap<String, TreeSet<String>> slots = new TreeMap<>();
            for (String platform : entries.platformIds()) {
                fettle.oracle.Space space = fettle.oracle.Space.of(entries, platform, SmallCatalogs.MOST_CANDIDATES).orElseThrow();
                for (SlotId slot : landscape.terrain().slots()) {
                    if (relations.catalog().parts().containsKey(slot.host()) || slot.host().equals(platform)) {
                        new fettle.oracle.Ladder(space, slot.host(), slot.slot(), lens.id(), Optional.empty()).standings().forEach((part, standing) -> {
                            standings.computeIfAbsent(part, unused -> new ArrayList<>()).add(standing);
                            slots.computeIfAbsent(part, unused -> new TreeSet<>()).add(slot.toString());
                        });
                    }
                }
            }
            SortedMap<String, TreeSet<String>> expected = new TreeMap<>(slots);
            expected.keySet().removeIf(part -> standings.get(part).stream().anyMatch(standing -> standing != fettle.oracle.Ladder.Standing.BETWEEN));
            Middles.Outcome outcome = middles.of(List.of(lens)).get(0);
            assertEquals(List.of(), outcome.open());
            Statistics.label("parts between").collect(Math.min(2, expected.size()));
            Map<String, TreeSet<String>> found = outcome.between().entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, each ->
                    each.getValue().stream().flatMap(between -> between.slots().stream()).map(SlotId::toString).collect(Collectors.toCollection(TreeSet::new))));
            assertEquals(expected, new TreeMap<>(found));
            outcome.between().forEach((part, places) -> places.forEach(place -> below(part, place)));
        }
    }

    /** What is shown is the part's, and lies below the line from one rung to the other. */
    private static void below(String part, BetweenRungs between) {
        assertEquals(part, between.shown().assembly().orElseThrow().part());
        assertTrue(between.lower().cost().compareTo(between.shown().cost()) < 0, between::toString);
        assertTrue(between.shown().cost().compareTo(between.upper().cost()) < 0, between::toString);
        assertTrue(between.stepTo().compareTo(between.stepPast()) > 0, between::toString);
    }
}
