package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.document.Documents;
import fettle.relation.Relations;
import fettle.space.Catalogs;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What a swap does to a limit, whether the build kept it before or not. */
class SwapLimitsTest {

    /** The limits that each part breaks when it takes the place of the plain one. */
    private static Map<String, List<String>> broken(String limit) {
        Relations relations = Catalogs.relations("""
                {'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'},
                 'currencies': [{'id': 'scrip', 'rate': 1}],
                 'attributes': [{'id': 'grip', 'unit': 'pt', 'better': 'higher', 'combine': 'sum', 'decimals': 1, 'shown': 0},
                                {'id': 'mass', 'unit': 'kg', 'better': 'lower', 'combine': 'sum', 'decimals': 1, 'shown': 1}],
                 'kinds': [{'id': 'k'}], 'vendors': [{'id': 'market', 'tiers': 0}],
                 'lenses': [{'id': 'hold', 'weights': {'grip': 1}}],
                 'limits': [{'id': 'arm', 'attribute': 'mass', 'atMost': %s}],
                 'platforms': [{'id': 'frame', 'slots': [{'id': 'front', 'accepts': ['kind:k'], 'required': true}]}],
                 'parts': [{'id': 'plain', 'kind': 'k', 'stats': {'mass': 2}},
                           {'id': 'light', 'kind': 'k', 'stats': {'mass': 1.5, 'grip': 1}},
                           {'id': 'even', 'kind': 'k', 'stats': {'mass': 2, 'grip': 1}},
                           {'id': 'heavy', 'kind': 'k', 'stats': {'mass': 2.5, 'grip': 1}}],
                 'offers': [{'part': 'plain', 'vendor': 'market', 'price': 1}, {'part': 'light', 'vendor': 'market', 'price': 1},
                            {'part': 'even', 'vendor': 'market', 'price': 1}, {'part': 'heavy', 'vendor': 'market', 'price': 1}]}
                """.formatted(limit));
        String json = "{'build': {'id': 'b', 'platform': 'frame', 'patch': '1', 'lens': 'hold', 'parts': {'front': 'plain'}}}";
        Build build = BuildReader.read(Documents.content("build.json", json.replace('\'', '"').getBytes(StandardCharsets.UTF_8))).get(0);
        Improving improving = new Improving(relations);
        Improvement improvement = improving.of(build, relations.catalog().lenses().get("hold"), Set.of(), 1, Effort.unbounded(), Effort.unbounded());
        Map<String, List<String>> broken = new TreeMap<>();
        improving.swaps(improvement.before(), improvement.weighing(), Optional.empty()).swaps().forEach(swap -> broken.put(swap.to().get(""), swap.limitsBroken()));
        return broken;
    }

    @Test
    void a_limit_that_holds_is_broken_by_what_takes_the_build_past_it() {
        assertEquals(Map.of("light", List.of(), "even", List.of(), "heavy", List.of("arm")), broken("2.2"));
    }

    @Test
    void a_limit_that_is_exceeded_is_broken_again_only_by_what_takes_the_build_farther_past_it() {
        assertEquals(Map.of("light", List.of(), "even", List.of(), "heavy", List.of("arm")), broken("1"));
    }

    @Test
    void a_limit_that_everything_keeps_is_broken_by_nothing() {
        assertEquals(Map.of("light", List.of(), "even", List.of(), "heavy", List.of()), broken("2.5"));
    }
}
