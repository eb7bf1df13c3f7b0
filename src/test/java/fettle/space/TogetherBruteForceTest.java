package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.SlotId;
import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.oracle.Oracle;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tools.jackson.databind.JsonNode;

/** Parts can be together exactly where one of all valid builds has them; the build shown is one of these, and no reason against it can be left out. */
class TogetherBruteForceTest {

    @Provide
    static Arbitrary<String> catalogs() {
        return SmallCatalogs.catalogs();
    }

    @Property(tries = 500)
    void answers_agree_with_brute_force(@ForAll("catalogs") String json) {
        JsonNode catalog = JsonText.read(json);
        Entries entries = Entries.of(catalog);
        Relations relations = Catalogs.relations(json);
        Space space = Space.of(relations);
        for (String platform : entries.platformIds()) {
            fettle.oracle.Survey expected = new fettle.oracle.Survey(fettle.oracle.Space.of(entries, platform, SmallCatalogs.MOST_CANDIDATES).orElseThrow());
            for (List<String> asked : questions(entries.partIds())) {
                Together answer = space.together(platform, asked);
                assertEquals(expected.together(asked).isPresent(), answer instanceof Together.Possible, asked + " on " + platform + ": " + answer);
                check(catalog, relations, asked, answer);
            }
            Set<String> dead = expected.deadSlots();
            for (SlotId slot : relations.slots(platform)) {
                Together answer = space.inUse(platform, slot);
                assertEquals(dead.contains(slot.toString()), answer instanceof Together.Impossible, slot + ": " + answer);
                check(catalog, relations, List.of(), answer);
            }
        }
    }

    /** Nothing, each part, and neighbours. */
    private static List<List<String>> questions(List<String> parts) {
        List<List<String>> questions = new ArrayList<>(List.of(List.of()));
        for (int i = 0; i < parts.size(); i++) {
            questions.add(List.of(parts.get(i)));
            if (i > 0) {
                questions.add(List.of(parts.get(i), parts.get(i - 1)));
                questions.add(List.of(parts.get(i), parts.get(i / 2)));
            }
        }
        return questions;
    }

    private static void check(JsonNode catalog, Relations relations, List<String> asked, Together answer) {
        if (answer instanceof Together.Possible possible) {
            assertTrue(possible.parts().values().containsAll(asked), possible::toString);
            assertEquals(List.of(), Oracle.valid(catalog, JsonText.read(written(possible))), possible::toString);
        } else {
            irreducible(relations, assertInstanceOf(Together.Impossible.class, answer));
        }
    }

    private static void irreducible(Relations relations, Together.Impossible impossible) {
        Terrain terrain = Terrain.of(relations);
        Setting setting = new Setting(terrain, new Takers(terrain), new TermMembers(relations, terrain), Bounds.ORDINARY, new HashMap<>(), terrain.number(impossible.platform()));
        assertNull(new Holding(setting, impossible.because()).build(), "enough");
        for (Cause cause : impossible.because()) {
            List<Cause> others = new ArrayList<>(impossible.because());
            others.remove(cause);
            Specimen without = new Holding(setting, others).build();
            assertNotNull(without, () -> cause + " can be left out of " + impossible);
            Set<String> kept = others.stream().map(TogetherBruteForceTest::bare).collect(Collectors.toSet());
            List<Cause> broken = new Inspection(relations, setting).broken(without);
            for (Cause found : broken) {
                // Values clash only together.
                boolean clash = !(found instanceof Cause.Values values) || broken.stream().filter(other -> sameTrait(other, values)).map(TogetherBruteForceTest::bare).allMatch(kept::contains);
                assertFalse(clash && kept.contains(bare(found)), () -> found + " is not respected");
            }
        }
    }

    private static boolean sameTrait(Cause cause, Cause.Values values) {
        return cause instanceof Cause.Values other && other.agreement().trait().equals(values.agreement().trait());
    }

    /** A cause without its facts. */
    private static String bare(Cause cause) {
        if (cause instanceof Cause.Only only) {
            return "only " + only.part();
        } else if (cause instanceof Cause.Unreached) {
            return "unreached";
        } else if (cause instanceof Cause.Rule rule) {
            return rule.clause().toString();
        } else if (cause instanceof Cause.Nesting nesting) {
            return "nesting " + nesting.noReentry().part();
        }
        return cause.toString();
    }

    private static String written(Together.Possible possible) {
        Map<String, List<String>> bySlot = new TreeMap<>();
        possible.parts().forEach((path, part) -> {
            int colon = path.lastIndexOf(':');
            String slot = colon > path.lastIndexOf('/') ? path.substring(0, colon) : path;
            bySlot.computeIfAbsent(slot, unused -> new ArrayList<>()).add('"' + part + '"');
        });
        String parts = bySlot.entrySet().stream().map(entry -> '"' + entry.getKey() + "\": " + entry.getValue()).collect(Collectors.joining(", "));
        return "{\"id\": \"shown\", \"platform\": \"" + possible.platform() + "\", \"parts\": {" + parts + "}}";
    }
}
