package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Limit;
import fettle.oracle.Assembly;
import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.math.BigInteger;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;

/** What lint asks of all builds is answered as the survey of them all answers it, which brute force has confirmed. */
class SoundingTest {

    private static final int MOST_CANDIDATES = 1_500;

    @Provide
    static Arbitrary<String> catalogs() {
        return Arbitraries.randomValue(RandomCatalog::json);
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void used_and_unused_parts_and_slots_are_those_of_the_survey(@ForAll("catalogs") String json) {
        Space space = Space.of(Catalogs.relations(json));
        SortedMap<String, Survey> surveys = space.survey();
        SortedMap<String, Vitals> vitals = Sounding.of(Catalogs.relations(json)).vitals();
        assertEquals(surveys.keySet(), vitals.keySet());
        surveys.forEach((platform, survey) -> {
            Survey.Known known = assertInstanceOf(Survey.Known.class, survey);
            Vitals found = vitals.get(platform);
            assertEquals(known.isVoid(), found.empty(), json);
            assertEquals(known.reachable(), found.reachable());
            assertEquals(known.dead(), found.dead(), json);
            assertEquals(known.deadSlots(), found.deadSlots(), json);
            assertEquals(0, found.open().size());
        });
    }

    /** Catalogs small enough to look at each build, with limits of every sort. */
    @Provide
    static Arbitrary<String> limited() {
        return Arbitraries.randomValue(random -> {
            while (true) {
                String json = RandomCatalog.json(random).replace("\"constraints\":", "\"limits\": [" + limits(random) + "], \"constraints\":");
                Entries entries = Entries.of(JsonText.read(json));
                if (entries.platformIds().stream().allMatch(platform -> fettle.oracle.Space.small(entries, platform, MOST_CANDIDATES))) {
                    return json;
                }
            }
        });
    }

    private static String limits(Random random) {
        List<String> attributes = List.of("grip", "kick", "pace", "top", "floor");
        return IntStream.range(0, 4).mapToObj(i -> {
            String bound = random.nextInt(3) == 0
                    ? String.valueOf(random.nextInt(120) - 60)
                    : "{\"by\": \"" + attributes.get(random.nextInt(5)) + "\", \"points\": [" + IntStream.range(0, 1 + random.nextInt(3))
                            .mapToObj(x -> "[" + (30 * x - 30) + ", " + (random.nextInt(120) - 60) + "]").collect(Collectors.joining(", ")) + "]}";
            return "{\"id\": \"l" + i + "\", \"attribute\": \"" + attributes.get(random.nextInt(5)) + "\", \"" + (random.nextBoolean() ? "atLeast" : "atMost") + "\": " + bound + "}";
        }).collect(Collectors.joining(", "));
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void limits_are_kept_by_the_builds_that_keep_them(@ForAll("limited") String json) {
        Relations relations = Catalogs.relations(json);
        Map<String, LimitVerdict.KeptBy> expected = new TreeMap<>();
        Entries entries = Entries.of(JsonText.read(json));
        for (Limit limit : relations.catalog().limits().values()) {
            Set<Boolean> found = new HashSet<>();
            for (String platform : entries.platformIds()) {
                for (Assembly build : fettle.oracle.Space.of(entries, platform, MOST_CANDIDATES).orElseThrow().builds()) {
                    found.add(LimitMargin.of(limit, fettle.oracle.Totals.of(entries, build, true, Optional.empty())).holds());
                }
            }
            if (!found.isEmpty()) {
                expected.put(limit.id(), found.size() == 2 ? LimitVerdict.KeptBy.SOME : found.contains(true) ? LimitVerdict.KeptBy.ALL : LimitVerdict.KeptBy.NONE);
            }
        }
        assertEquals(expected, standings(Sounding.of(relations).limits()), json);
        Space space = Space.of(relations);
        LimitVerdicts unaided = new LimitVerdicts(relations.catalog(), Terrain.of(relations));
        assertEquals(expected, standings(unaided.verdicts(() -> space.folded(entries.platformIds()))), json);
    }

    private static Map<String, LimitVerdict.KeptBy> standings(List<LimitVerdict> verdicts) {
        Map<String, LimitVerdict.KeptBy> standings = new TreeMap<>();
        verdicts.forEach(verdict -> standings.put(verdict.limit().id(), verdict.keptBy()));
        return standings;
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void idle_relations_can_be_left_out_together_and_the_others_cannot(@ForAll("catalogs") String json) {
        assertIdle(json);
    }

    /** Slots most of which must be filled, each with a part of every colour, some of which exclude those of the same colour in other slots, so that few builds are left. */
    @Provide
    static Arbitrary<String> colourings() {
        return Arbitraries.randomValue(random -> {
            int slots = 4 + random.nextInt(5);
            int colours = 2 + random.nextInt(2);
            String needs = random.nextInt(3) == 0 ? ", 'needs': [['p0-0', 'p1-1']]" : "";
            return "{'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'}, 'currencies': [{'id': 'scrip', 'rate': 1}], 'platforms': [{'id': 'f', 'slots': ["
                    + IntStream.range(0, slots).mapToObj(i -> "{'id': 's" + i + "', 'accepts': ['tag:t" + i + "'], 'required': " + (random.nextInt(8) > 0) + "}")
                            .collect(Collectors.joining(", "))
                    + "]}], 'parts': ["
                    + IntStream.range(0, slots * colours).mapToObj(i -> coloured(i / colours, i % colours, colours, i == slots * colours - 1 ? needs : "", random))
                            .collect(Collectors.joining(", "))
                    + "]}";
        });
    }

    private static String coloured(int slot, int colour, int colours, String more, Random random) {
        List<String> others = IntStream.range(0, slot).filter(other -> random.nextInt(2) == 0)
                .mapToObj(other -> "'p" + other + "-" + (random.nextInt(9) == 0 ? random.nextInt(colours) : colour) + "'").toList();
        // What stands on another part has to be filled too.
        String on = random.nextInt(9) == 0 ? ", 'slots': [{'id': 'on', 'required': true, 'accepts': ['x', 'y']}]" : "";
        String beside = slot == 0 && colour == 0 ? "{'id': 'x'}, {'id': 'y', 'excludes': ['p1-0']}, " : "";
        return beside + "{'id': 'p" + slot + "-" + colour + "', 'tags': ['t" + slot + "'], 'excludes': " + others + on + more + "}";
    }

    @Property(tries = 200, shrinking = ShrinkingMode.OFF)
    void among_choices_that_hang_on_each_other_the_same_are_idle(@ForAll("colourings") String json) {
        assertIdle(json);
    }

    /** Each zone is taken by two parts that one slot has room for one of, save the last, which keeps two slots apart. */
    @Example
    void of_many_zones_those_that_room_rules_out_anyway_are_idle() {
        StringBuilder slots = new StringBuilder();
        StringBuilder zones = new StringBuilder();
        StringBuilder parts = new StringBuilder();
        for (int i = 0; i < 10; i++) {
            String other = i < 9 ? "t" + i : "u";
            slots.append("{'id': 's").append(i).append("', 'accepts': ['tag:t").append(i).append("']}, ");
            zones.append("{'id': 'z").append(i).append("'}").append(i < 9 ? ", " : "");
            parts.append("{'id': 'a").append(i).append("', 'tags': ['t").append(i).append("'], 'claims': ['z").append(i).append("']}, {'id': 'b").append(i)
                    .append("', 'tags': ['").append(other).append("'], 'claims': ['z").append(i).append("']}").append(i < 9 ? ", " : "");
        }
        String json = "{'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'}, 'currencies': [{'id': 'scrip', 'rate': 1}], 'zones': [" + zones
                + "], 'platforms': [{'id': 'f', 'slots': [" + slots + "{'id': 'u', 'accepts': ['tag:u']}]}], 'parts': [" + parts + "]}";
        assertEquals(9, assertIdle(json).size());
    }

    private static List<IdleRelation> assertIdle(String json) {
        Relations relations = Catalogs.relations(json);
        Sounding sounding = Sounding.of(relations);
        List<IdleRelation> idle = sounding.idle();
        assertEquals(List.of(), sounding.idleOrNot());
        Set<Object> without = new HashSet<>();
        idle.forEach(relation -> without.addAll(told(relations, relation)));
        Map<String, BigInteger> all = counts(relations, Set.of());
        assertEquals(all, counts(relations, without), json);

        Set<String> used = new HashSet<>(relations.catalog().parts().keySet());
        sounding.vitals().values().forEach(vitals -> used.removeIf(part -> sounding.vitals().values().stream()
                .noneMatch(each -> each.reachable().contains(part) && !each.dead().contains(part))));
        Set<Object> kept = new HashSet<>();
        for (Clause clause : relations.clauses()) {
            boolean forbids = clause.need().isEmpty() || !clause.apart();
            boolean ofUsed = clause.when().stream().allMatch(term -> term.sort() == Term.Sort.SLOT ? !relations.slots(term).isEmpty()
                    : relations.members(term).keySet().stream().anyMatch(part -> used.contains(part) || part.startsWith("f") && term.sort() != Term.Sort.NAME));
            if (forbids && ofUsed && !without.contains(clause)) {
                Set<Object> more = new HashSet<>(without);
                relations.clauses().stream().filter(other -> says(relations, other).equals(says(relations, clause))).forEach(more::add);
                assertNotEquals(all, counts(relations, more), () -> clause + " is not told as idle in " + json);
                assertTrue(!ownEntry(clause) || kept.add(says(relations, clause)), () -> clause + " says no more than another that is kept, and is not told, in " + json);
            }
        }
        return idle;
    }

    private static Set<Object> told(Relations relations, IdleRelation idle) {
        Set<Object> told = new HashSet<>();
        relations.clauses().stream().filter(clause -> clause.rule().equals(idle.rule()))
                .filter(clause -> clause.because().isEmpty() ? clause.when().get(0).key().equals(idle.key()) : idle.because().containsAll(clause.because()))
                .forEach(told::add);
        if (idle.rule().equals("disagreement")) {
            told.add(idle.key());
        }
        assertFalse(told.isEmpty());
        return told;
    }

    /** Whether it is what a constraint or a zone says, and not what one part says of others. */
    private static boolean ownEntry(Clause clause) {
        return clause.rule().equals("broken-constraint") || clause.rule().equals("zone-clash");
    }

    private static Object says(Relations relations, Clause clause) {
        return List.of(clause.rule(), clause.apart(), clause.need().stream().flatMap(term -> things(relations, term).stream()).collect(Collectors.toSet()),
                clause.when().stream().collect(Collectors.groupingBy(term -> things(relations, term), Collectors.counting())));
    }

    private static Set<Object> things(Relations relations, Term term) {
        Set<Object> things = new HashSet<>(relations.members(term).keySet());
        things.addAll(relations.slots(term).keySet());
        return things;
    }

    private static Map<String, BigInteger> counts(Relations relations, Set<Object> without) {
        Rules rules = new Rules(
                relations.clauses().stream().filter(clause -> !without.contains(clause)).toList(),
                relations.agreements().stream().filter(agreement -> !without.contains(agreement.trait())).toList());
        Map<String, BigInteger> counts = new TreeMap<>();
        Space.of(relations, rules, Bounds.ORDINARY).survey().forEach((platform, survey) -> counts.put(platform, ((Survey.Known) survey).count()));
        return counts;
    }
}
