package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import java.math.BigDecimal;
import java.math.BigInteger;
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

/** What is said of all valid builds is what one finds by looking at each of them. */
class BruteForceTest {

    @Provide
    static Arbitrary<String> catalogs() {
        return SmallCatalogs.catalogs();
    }

    @Property(tries = 500, shrinking = ShrinkingMode.OFF)
    void surveys_agree_with_brute_force(@ForAll("catalogs") String json) {
        Entries entries = Entries.of(JsonText.read(json));
        Space space = Space.of(Catalogs.relations(json));
        assertEquals(fettle.oracle.Survey.homeless(entries), space.homeless());
        SortedMap<String, Survey> surveys = space.survey();
        assertEquals(new TreeSet<>(entries.platformIds()), surveys.keySet());
        for (String platform : entries.platformIds()) {
            fettle.oracle.Survey expected = new fettle.oracle.Survey(fettle.oracle.Space.of(entries, platform, SmallCatalogs.MOST_CANDIDATES).orElseThrow());
            Survey.Known known = assertInstanceOf(Survey.Known.class, surveys.get(platform), surveys.get(platform)::toString);
            assertEquals(BigInteger.valueOf(expected.count()), known.count(), platform);
            assertEquals(expected.reachable(), known.reachable());
            assertEquals(expected.deadParts(), known.dead());
            assertEquals(expected.essentialParts(), known.essential());
            assertEquals(expected.deadSlots(), known.deadSlots().stream().map(Object::toString).collect(Collectors.toCollection(TreeSet::new)));
            assertEquals(plain(expected), plain(known));
        }
    }

    private static SortedMap<String, String> plain(fettle.oracle.Survey survey) {
        SortedMap<String, String> ranges = new TreeMap<>();
        survey.ranges().forEach((attribute, range) -> ranges.put(attribute, text(range.least()) + " to " + text(range.greatest())));
        return ranges;
    }

    private static SortedMap<String, String> plain(Survey.Known survey) {
        SortedMap<String, String> ranges = new TreeMap<>();
        survey.ranges().forEach((attribute, range) -> ranges.put(attribute, text(range.least()) + " to " + text(range.greatest())));
        return ranges;
    }

    private static String text(BigDecimal value) {
        return Optional.of(value).map(BigDecimal::stripTrailingZeros).map(BigDecimal::toPlainString).orElseThrow();
    }
}
