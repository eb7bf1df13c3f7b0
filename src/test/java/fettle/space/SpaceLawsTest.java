package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** How counts follow changes of a catalog, whatever its size. */
class SpaceLawsTest {

    private static final JsonMapper JSON = new JsonMapper();
    private static final Pattern PART = Pattern.compile("\\bp(\\d+)\\b");
    private static final int MOST_PARTS = 9;
    /** So little that what is tried stays quick; a change of it may take more. */
    private static final Bounds QUICK = new Bounds(20_000, 2_000, 100_000);

    /** Catalogs of whose platforms all are counted and one at least has builds. */
    @Provide
    static Arbitrary<String> catalogs() {
        return Arbitraries.randomValue(random -> {
            while (true) {
                String json = RandomCatalog.json(random, 2 + random.nextInt(MOST_PARTS - 1));
                if (counts(json, QUICK).map(counts -> counts.values().stream().anyMatch(count -> count.signum() > 0)).orElse(false)) {
                    return json;
                }
            }
        });
    }

    /** The count of each platform, or nothing where one was left undecided. */
    private static Optional<SortedMap<String, BigInteger>> counts(String json, Bounds bounds) {
        SortedMap<String, BigInteger> counts = new TreeMap<>();
        for (Survey survey : Space.of(Catalogs.relations(json), bounds).survey().values()) {
            if (!(survey instanceof Survey.Known known)) {
                return Optional.empty();
            }
            counts.put(known.platform(), known.count());
        }
        return Optional.of(counts);
    }

    private static SortedMap<String, BigInteger> counts(String json) {
        return counts(json, Bounds.ORDINARY).orElseThrow();
    }

    @Property(tries = 200)
    void one_exclusion_more_never_raises_a_count(@ForAll("catalogs") String json, @ForAll Random random) {
        ObjectNode catalog = (ObjectNode) JSON.readTree(json);
        ArrayNode parts = (ArrayNode) catalog.get("parts");
        ObjectNode one = (ObjectNode) parts.get(random.nextInt(parts.size()));
        one.withArray("excludes").add(parts.get(random.nextInt(parts.size())).get("id").asString());
        SortedMap<String, BigInteger> before = counts(json);
        SortedMap<String, BigInteger> after = counts(catalog.toString());
        assertEquals(before.keySet(), after.keySet());
        before.forEach((platform, count) -> assertTrue(after.get(platform).compareTo(count) <= 0, () -> platform + ": " + count + " rose to " + after.get(platform)));
    }

    @Property(tries = 200)
    void other_names_in_another_order_change_no_count(@ForAll("catalogs") String json) {
        String renamed = PART.matcher(json).replaceAll(part -> "other-" + (900 - Integer.parseInt(part.group(1))));
        assertEquals(counts(json), counts(renamed));
    }

    /** The first slot of the platform takes one part, which it requires. */
    @Property(tries = 200)
    void a_count_is_the_sum_over_the_choices_of_a_required_slot(@ForAll("catalogs") String json) {
        ObjectNode catalog = (ObjectNode) JSON.readTree(json);
        ObjectNode platform = (ObjectNode) catalog.get("platforms").get(0);
        if (platform.path("slots").isEmpty()) {
            platform.withArray("slots").addObject().put("id", "only").withArray("mounts").add("m");
        }
        ObjectNode slot = (ObjectNode) platform.get("slots").get(0);
        slot.put("required", true).put("most", 1).remove(List.of("units"));
        String name = platform.get("id").asString();
        BigInteger whole = counts(catalog.toString()).get(name);
        BigInteger sum = BigInteger.ZERO;
        for (String part : Catalogs.relations(catalog.toString()).candidates(new fettle.catalog.SlotId(name, slot.get("id").asString()))) {
            sum = sum.add(counts(taking(catalog, part)).get(name));
        }
        assertEquals(whole, sum);
    }

    /** The catalog where the first slot of its first platform takes this part alone. */
    private static String taking(JsonNode catalog, String part) {
        ObjectNode copy = (ObjectNode) catalog.deepCopy();
        ObjectNode slot = (ObjectNode) copy.get("platforms").get(0).get("slots").get(0);
        slot.remove(List.of("mounts", "rejects"));
        slot.putArray("accepts").add(part);
        return copy.toString();
    }
}
