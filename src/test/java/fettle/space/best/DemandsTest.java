package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.catalog.BuildReader;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.space.Space;
import java.nio.charset.StandardCharsets;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Demands that conflict, and a search that is cut short, worked by hand. */
class DemandsTest {

    private static final Relations RELATIONS = Deriver.derive(RuleBase.builtIn(), catalog("""
            {'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'},
             'currencies': [{'id': 'scrip', 'rate': 1}],
             'attributes': [{'id': 'grip', 'unit': 'pt', 'better': 'higher', 'combine': 'sum', 'decimals': 1, 'shown': 0},
                            {'id': 'mass', 'unit': 'g', 'better': 'lower', 'combine': 'sum', 'decimals': 1, 'shown': 0}],
             'kinds': [{'id': 'k'}], 'vendors': [{'id': 'market', 'tiers': 0}, {'id': 'smith', 'tiers': 1}],
             'access': [{'id': 'novice', 'vendors': {'market': 0}}],
             'lenses': [{'id': 'hold', 'weights': {'grip': 1}}],
             'limits': [{'id': 'carry', 'attribute': 'mass', 'atMost': 15, 'loaded': false}, {'id': 'firm', 'attribute': 'grip', 'atLeast': 0}],
             'platforms': [{'id': 'frame', 'stats': {'mass': 10}, 'slots': [{'id': 'a', 'accepts': ['tag:a'], 'required': true}]},
                           {'id': 'rack', 'slots': [{'id': 'b', 'accepts': ['tag:a']}]}],
             'parts': [{'id': 'bar', 'kind': 'k', 'tags': ['a'], 'stats': {'grip': 5, 'mass': 4}},
                       {'id': 'beam', 'kind': 'k', 'tags': ['a'], 'stats': {'grip': 9, 'mass': 6}}],
             'offers': [{'part': 'bar', 'vendor': 'market', 'price': 10}, {'part': 'beam', 'vendor': 'smith', 'tier': 1, 'price': 3}]}
            """));

    private static Catalog catalog(String json) {
        return CatalogReader.read(List.of(Documents.content("catalog.json", json.replace('\'', '"').getBytes(StandardCharsets.UTF_8))));
    }

    private static Outcome outcome(Effort effort, String build, String... keep) {
        String platform = build.contains("'b':") ? "rack" : "frame";
        String json = ("{'build': {'id': 'b', 'platform': '" + platform + "', 'patch': '1', 'lens': 'hold', " + build + "}}").replace('\'', '"');
        Build read = BuildReader.read(Documents.content("build.json", json.getBytes(StandardCharsets.UTF_8))).get(0);
        Optimum optimum = new Optimum(RELATIONS, Space.of(RELATIONS).folded(platform));
        return optimum.seek(OptimumTest.demands(RELATIONS, read, Set.of(keep)), effort);
    }

    private static String conflict(String build, String... keep) {
        Outcome.Nothing nothing = (Outcome.Nothing) outcome(Effort.unbounded(), build, keep);
        assertTrue(nothing.smallest());
        return nothing.conflict().stream().map(Demand::key).collect(Collectors.joining(" + "));
    }

    @Test
    void demands_that_can_all_be_met_do_not_conflict() {
        assertEquals("{a=bar}", ((Outcome.Found) outcome(Effort.unbounded(), "'parts': {'a': 'bar'}, 'budget': 10")).build().paths().toString());
    }

    @Test
    void only_demands_that_are_needed_for_the_conflict_are_named() {
        // the bar is too dear, the beam too heavy
        assertEquals("budget + limit carry", conflict("'parts': {'a': 'bar'}, 'budget': 9.99"));
        assertEquals("limit carry + path a", conflict("'parts': {'a': 'beam'}", "a"));
        assertEquals("access + path b", conflict("'parts': {'b': 'beam'}, 'access': 'novice'", "b"));
        assertEquals("budget + path b", conflict("'parts': {'b': 'beam'}, 'budget': 2.99", "b"));
    }

    @Test
    void a_path_that_holds_nothing_cannot_be_kept() {
        NothingKept refused = assertThrows(NothingKept.class, () -> outcome(Effort.unbounded(), "'parts': {}", "a"));
        assertEquals(Set.of("a"), refused.paths());
    }

    @Test
    void a_search_cut_short_says_what_nothing_exceeds() {
        assertEquals("5", bound(cutShort(Integer.MAX_VALUE)).toPlainString());
        int looks = 1;
        while (!(cutShort(looks) instanceof Outcome.Found found && found.proved())) {
            looks++;
        }
        Outcome.Found last = (Outcome.Found) cutShort(looks - 1);
        assertEquals("5", last.benefit().toPlainString());
        // half a bar and half a beam would weigh just 15 and grip 7; at the rate that says so the beam alone comes to a little less, in whole points
        assertEquals("6", last.bound().toPlainString());
        for (int look = 1; look < looks; look++) {
            assertTrue(bound(cutShort(look)).compareTo(last.bound()) >= 0, "less time never bounds closer");
        }
    }

    /** What comes of it when time is over after so many looks at the clock. */
    private static Outcome cutShort(int looks) {
        return cutShort(looks, "'parts': {'a': 'bar'}");
    }

    private static Outcome cutShort(int looks, String build) {
        int[] looked = {0};
        return outcome(Effort.of(Duration.ofSeconds(1), () -> ++looked[0] > looks ? 2_000_000_000L : 0), build);
    }

    @Test
    void demands_are_said_to_be_the_fewest_only_where_there_was_time_to_see_it() {
        int unsure = 0;
        for (int looks = 1; ; looks++) {
            if (cutShort(looks, "'parts': {'a': 'bar'}, 'budget': 9.99") instanceof Outcome.Nothing nothing) {
                List<String> keys = nothing.conflict().stream().map(Demand::key).toList();
                assertTrue(keys.containsAll(List.of("budget", "limit carry")), keys.toString());
                if (nothing.smallest()) {
                    assertEquals(2, keys.size());
                    break;
                }
                unsure++;
            }
        }
        assertTrue(unsure > 0, "time was over in between");
    }

    private static BigDecimal bound(Outcome outcome) {
        return outcome instanceof Outcome.Found found ? found.bound() : ((Outcome.CutShort) outcome).bound().orElseThrow();
    }
}
