package fettle.space.patch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.oracle.Dominance;
import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.oracle.RandomPatches;
import fettle.oracle.RandomPatches.Patch;
import fettle.oracle.Space;
import fettle.relation.Relations;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.statistics.Statistics;
import tools.jackson.databind.JsonNode;

/** What a patch is said to do to advice is what the brute force says of dominance on both sides. */
class AdviceTest {

    private static final int MOST_CANDIDATES = 300;

    @Provide
    Arbitrary<Patch> patches() {
        return RandomPatches.patches(MOST_CANDIDATES).filter(patch -> small(patch.old()) && small(patch.now()));
    }

    private static boolean small(JsonNode catalog) {
        Entries entries = Entries.of(JsonText.read(catalog.toString()));
        return entries.platformIds().stream().allMatch(platform -> Space.small(entries, platform, MOST_CANDIDATES));
    }

    @Property(tries = 30, shrinking = ShrinkingMode.OFF)
    void a_catalog_compared_with_itself_changes_no_advice(@ForAll("patches") Patch patch) {
        Sides same = Sides.of(patch.old(), patch.old());
        assertEquals(List.of(), advice(same).shifts());
    }

    @Property(tries = 100, shrinking = ShrinkingMode.OFF)
    void swapping_the_catalogs_swaps_advice_and_all_of_it_agrees_with_brute_force(@ForAll("patches") Patch patch) {
        Sides forth = Sides.of(patch.old(), patch.now());
        Advice advice = advice(forth);
        assertEquals(Map.of(), advice.open());
        List<String> newly = named(advice, true);
        List<String> noLonger = named(advice, false);
        Advice back = advice(Sides.of(patch.now(), patch.old()));
        assertEquals(newly, named(back, false));
        assertEquals(noLonger, named(back, true));

        SortedMap<String, Boolean> before = dominated(patch.old(), forth.old());
        SortedMap<String, Boolean> since = dominated(patch.now(), forth.now());
        TreeSet<String> both = new TreeSet<>(before.keySet());
        both.retainAll(since.keySet());
        assertEquals(both.stream().filter(seat -> !before.get(seat) && since.get(seat)).toList(), newly);
        assertEquals(both.stream().filter(seat -> before.get(seat) && !since.get(seat)).toList(), noLonger);
        Statistics.label("advice changed").collect(!newly.isEmpty() || !noLonger.isEmpty());
    }

    private static Advice advice(Sides sides) {
        return Advice.between(sides.old(), sides.now(), List.of(), Advice.Scope.ALL).orElseThrow();
    }

    private static List<String> named(Advice advice, boolean newly) {
        return advice.shifts().stream().filter(shift -> shift.newly() == newly)
                .map(shift -> shift.platform() + " " + shift.host() + "/" + shift.slot() + " " + shift.part()).sorted().collect(Collectors.toList());
    }

    /** By platform, slot and part that stands there in some valid build, whether it is dominated there in either way. */
    private static SortedMap<String, Boolean> dominated(JsonNode catalog, Relations relations) {
        Entries entries = Entries.of(JsonText.read(catalog.toString()));
        SortedMap<String, Boolean> dominated = new TreeMap<>();
        for (String platform : entries.platformIds()) {
            Space space = Space.of(entries, platform, MOST_CANDIDATES).orElseThrow();
            relations.slots(platform).forEach(slot -> look(space, platform, slot.host(), slot.slot(), dominated));
            relations.catalog().parts().keySet().forEach(host -> relations.slots(host).forEach(slot -> look(space, platform, slot.host(), slot.slot(), dominated)));
        }
        return dominated;
    }

    private static void look(Space space, String platform, String host, String slot, SortedMap<String, Boolean> dominated) {
        Dominance free = Dominance.ignoringCost(space, host, slot);
        if (!free.heads().isEmpty()) {
            Dominance priced = Dominance.withCost(space, host, slot, Optional.empty());
            free.heads().forEach(part -> dominated.put(
                    platform + " " + host + "/" + slot + " " + part, free.dominated().containsKey(part) || priced.dominated().containsKey(part)));
        }
    }
}
