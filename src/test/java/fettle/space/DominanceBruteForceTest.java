package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.SlotId;
import fettle.oracle.Choice;
import fettle.oracle.Dominance;
import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.relation.Relations;
import fettle.space.worth.Comparison;
import fettle.space.worth.PartWorth;
import fettle.space.worth.SlotWorth;
import fettle.space.worth.ThoroughComparison;
import fettle.space.worth.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;

/** What is said of dominance is what one finds by putting every assembly in place of every other in every build. */
class DominanceBruteForceTest {

    @Provide
    static Arbitrary<String> catalogs() {
        return SmallCatalogs.catalogs();
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void verdicts_witnesses_and_twins_agree_with_brute_force(@ForAll("catalogs") String json) {
        agrees(json, landscape -> new Comparison(landscape, Optional.empty()));
    }

    @Property(tries = 300, shrinking = ShrinkingMode.OFF)
    void so_does_what_is_tried_where_a_verdict_is_not_settled_quickly(@ForAll("catalogs") String json) {
        agrees(json, ThoroughComparison::of);
    }

    /** Found by chance in tens of thousands: what was known of two classes was taken for what is known of two nodes of the same numbers. */
    @Example
    void a_class_is_not_taken_for_a_node_of_the_same_number() throws IOException {
        agrees(Files.readString(Path.of("src/test/resources/fettle/space/class-and-node-of-one-number.json")), landscape -> new Comparison(landscape, Optional.empty()));
    }

    private static void agrees(String json, Function<Landscape, Comparison> comparing) {
        Entries entries = Entries.of(JsonText.read(json));
        Relations relations = Catalogs.relations(json);
        Landscape landscape = Space.of(relations).landscape(relations.catalog().platforms().keySet());
        Comparison comparison = comparing.apply(landscape);
        for (String platform : landscape.platforms()) {
            fettle.oracle.Space space = fettle.oracle.Space.of(entries, platform, SmallCatalogs.MOST_CANDIDATES).orElseThrow();
            Map<SlotId, SlotWorth> found = new HashMap<>();
            comparison.platform(platform).forEach(worth -> found.put(worth.slot(), worth));
            for (SlotId slot : landscape.terrain().slots()) {
                Dominance free = Dominance.ignoringCost(space, slot.host(), slot.slot());
                if (free.heads().isEmpty()) {
                    assertTrue(!found.containsKey(slot), () -> platform + ", " + slot + " holds nothing");
                    continue;
                }
                SlotWorth worth = found.get(slot);
                assertEquals(free.heads(), worth.parts().keySet(), slot::toString);
                Dominance priced = Dominance.withCost(space, slot.host(), slot.slot(), Optional.empty());
                worth.parts().forEach((part, each) -> {
                    agrees(free, part, each.ignoringCost());
                    agrees(priced, part, each.withCost());
                });
                assertEquals(free.worseThanEmpty(), worth.parts().entrySet().stream().filter(each -> each.getValue().worseThanEmpty()).map(Map.Entry::getKey)
                        .collect(Collectors.toCollection(TreeSet::new)));
                assertEquals(free.twins(), worth.twins().stream().map(twins -> java.util.List.of(twins.one(), twins.other())).collect(Collectors.toSet()));
            }
        }
    }

    private static void agrees(Dominance expected, String part, Verdict verdict) {
        SortedMap<String, Map<Choice, Set<Choice>>> dominated = expected.dominated();
        String said = part + ": " + verdict;
        if (verdict instanceof Verdict.Dominated shown) {
            assertTrue(dominated.containsKey(part), said);
            Map<String, Set<String>> witnesses = new HashMap<>();
            dominated.get(part).forEach((choice, by) -> witnesses.put(plain(choice.toString()), by.stream().map(one -> plain(one.toString())).collect(Collectors.toSet())));
            Set<String> named = witnesses.get(plain(shown.shown().toString()));
            assertTrue(named != null && named.contains(plain(shown.by().map(Object::toString).orElse("(empty)"))), () -> said + " but " + dominated.get(part));
        } else if (verdict instanceof Verdict.Undominated undominated) {
            assertTrue(!dominated.containsKey(part), said);
            Choice best = expected.choices().stream().filter(choice -> plain(choice.toString()).equals(plain(undominated.best().toString()))).findFirst().orElseThrow();
            assertTrue(expected.witnesses(best).stream().allMatch(by -> by.head().equals(Optional.of(part))), said);
        } else if (verdict instanceof Verdict.Unsold) {
            assertTrue(!expected.heads().contains(part), said);
        } else {
            throw new AssertionError(said);
        }
    }

    private static String plain(String assembly) {
        return assembly.replace(" ", "");
    }
}
