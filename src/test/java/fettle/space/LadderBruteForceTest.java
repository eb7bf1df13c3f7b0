package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Access;
import fettle.catalog.Lens;
import fettle.catalog.SlotId;
import fettle.oracle.Choice;
import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.oracle.RandomCatalogs;
import fettle.relation.Relations;
import fettle.space.worth.Climb;
import fettle.space.worth.Ladder;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.statistics.Statistics;

/** The ladder of a slot is what one finds by weighing every assembly that goes there. */
class LadderBruteForceTest {

    @Provide
    static Arbitrary<String> catalogs() {
        return RandomCatalogs.catalogs().map(Object::toString).filter(SmallCatalogs::small);
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void ladders_agree_with_brute_force(@ForAll("catalogs") String json) {
        Entries entries = Entries.of(JsonText.read(json));
        Relations relations = Catalogs.relations(json);
        List<Optional<Access>> purses = new ArrayList<>(List.of(Optional.empty()));
        relations.catalog().access().values().forEach(access -> purses.add(Optional.of(access)));
        for (String platform : entries.platformIds()) {
            fettle.oracle.Space all = fettle.oracle.Space.of(entries, platform, SmallCatalogs.MOST_CANDIDATES).orElseThrow();
            Landscape landscape = Space.of(relations).landscape(List.of(platform));
            for (Lens lens : relations.catalog().lenses().values()) {
                for (Optional<Access> purse : purses) {
                    Climb climb = new Climb(landscape, platform, lens, purse);
                    for (SlotId slot : slots(relations, platform)) {
                        agree(new fettle.oracle.Ladder(all, slot.host(), slot.slot(), lens.id(), purse.map(Access::id)), climb.of(slot));
                    }
                }
            }
        }
    }

    private static List<SlotId> slots(Relations relations, String platform) {
        List<SlotId> slots = new ArrayList<>(relations.slots(platform));
        relations.catalog().parts().keySet().forEach(part -> slots.addAll(relations.slots(part)));
        return slots;
    }

    private static void agree(fettle.oracle.Ladder expected, Ladder ladder) {
        assertEquals(plain(expected.standings()), plain(ladder.standing()));
        assertEquals(expected.groups().size(), ladder.groups().size());
        Statistics.label("groups").collect(Math.min(3, ladder.groups().size()));
        for (int i = 0; i < ladder.groups().size(); i++) {
            Ladder.Group group = ladder.groups().get(i);
            List<fettle.oracle.Ladder.Offer> offers = expected.groups().get(i);
            assertEquals(offers.get(0).roles(), group.roles());
            List<fettle.oracle.Ladder.Rung> rungs = fettle.oracle.Ladder.rungs(offers);
            Statistics.label("rungs").collect(Math.min(4, rungs.size()));
            assertEquals(rungs.size(), group.rungs().size());
            for (int j = 0; j < rungs.size(); j++) {
                Ladder.Rung rung = group.rungs().get(j);
                assertEquals(0, rungs.get(j).cost().compareTo(rung.offer().cost()));
                assertEquals(0, rungs.get(j).benefit().compareTo(rung.offer().benefit()));
                assertEquals(rungs.get(j).step().map(Object::toString), rung.step().map(Object::toString));
                List<Ladder.Offer> told = new ArrayList<>(rung.alike());
                told.add(0, rung.offer());
                told.forEach(offer -> {
                    assertEquals(0, rung.offer().cost().compareTo(offer.cost()));
                    assertEquals(0, rung.offer().benefit().compareTo(offer.benefit()));
                });
                assertTrue(texts(rungs.get(j).choices()).containsAll(told.stream().map(offer -> text(offer.assembly())).toList()), () -> told + " of " + offers);
                assertEquals(heads(rungs.get(j).choices().stream().map(Choice::head)), heads(told.stream().map(offer -> offer.assembly().map(Assembly::part))));
            }
            others(offers, group);
        }
    }

    /** The parts that head some choices, each once, and nothing for the empty one. */
    private static List<String> heads(Stream<Optional<String>> heads) {
        return heads.map(head -> head.orElse("nothing")).distinct().sorted().toList();
    }

    /** Each part that heads no rung that is shown is shown once, with an assembly that stands as said. */
    private static void others(List<fettle.oracle.Ladder.Offer> offers, Ladder.Group group) {
        for (Ladder.Other other : group.others()) {
            fettle.oracle.Ladder.Offer found = offers.stream().filter(offer -> text(offer.choice()).equals(text(other.offer().assembly()))).findFirst().orElseThrow();
            assertEquals(0, found.cost().compareTo(other.offer().cost()));
            assertEquals(0, found.benefit().compareTo(other.offer().benefit()));
            assertEquals(fettle.oracle.Ladder.standing(offers, found).name(), other.standing().name());
        }
        TreeSet<String> heads = new TreeSet<>();
        offers.forEach(offer -> offer.choice().head().ifPresent(heads::add));
        TreeSet<String> told = new TreeSet<>();
        group.rungs().forEach(rung -> Stream.concat(Stream.of(rung.offer()), rung.alike().stream()).forEach(offer -> offer.assembly().ifPresent(assembly -> told.add(assembly.part()))));
        group.others().forEach(other -> assertTrue(told.add(other.offer().assembly().orElseThrow().part())));
        assertEquals(heads, told);
    }

    private static SortedMap<String, String> plain(SortedMap<String, ? extends Enum<?>> standings) {
        return new TreeMap<>(standings.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, each -> each.getValue().name())));
    }

    private static List<String> texts(List<Choice> choices) {
        return choices.stream().map(LadderBruteForceTest::text).toList();
    }

    private static String text(Choice choice) {
        return choice.assembly().map(assembly -> assembly.canonical().text()).orElse("nothing");
    }

    private static String text(Optional<Assembly> assembly) {
        return assembly.map(found -> written(found).canonical().text()).orElse("nothing");
    }

    private static fettle.oracle.Assembly written(Assembly assembly) {
        Map<String, List<fettle.oracle.Assembly>> slots = new TreeMap<>();
        assembly.slots().forEach((slot, held) -> slots.put(slot, held.stream().map(LadderBruteForceTest::written).toList()));
        return fettle.oracle.Assembly.of(assembly.part(), slots);
    }
}
