package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.space.Space;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Figures beyond what sums are counted in are weighed, and kept within limits, as exactly as others. */
class FarFiguresTest {

    /** The best of a slot that one of two parts may fill, with figures in an attribute that is weighed and one that counts for nothing. */
    private static Outcome.Found best(String attribute, String lens, String limits, String one, String other) {
        String json = """
                {'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'},
                 'currencies': [{'id': 'scrip', 'rate': 1}],
                 'attributes': [{'id': 'grip', 'better': 'higher', %s}, {'id': 'mass', 'better': 'lower', 'combine': 'sum'},
                                {'id': 'poise', 'better': 'higher', 'combine': 'sum'}],
                 'kinds': [{'id': 'k'}], 'vendors': [{'id': 'market', 'tiers': 0}],
                 'lenses': [{'id': 'hold', 'weights': %s}],
                 'limits': [%s],
                 'platforms': [{'id': 'frame', 'stats': {'grip': 1}, 'slots': [{'id': 'a', 'accepts': ['kind:k']}, {'id': 'b', 'accepts': ['kind:k']}]}],
                 'parts': [{'id': 'bar', 'kind': 'k', 'stats': {%s}}, {'id': 'beam', 'kind': 'k', 'stats': {%s}}],
                 'offers': [{'part': 'bar', 'vendor': 'market', 'price': 10}, {'part': 'beam', 'vendor': 'market', 'price': 3}]}
                """.formatted(attribute, lens, limits, one, other);
        Catalog catalog = CatalogReader.read(List.of(document(json)));
        Relations relations = Deriver.derive(RuleBase.builtIn(), catalog);
        Build build = BuildReader.read(document("{'build': {'id': 'b', 'platform': 'frame', 'patch': '1', 'lens': 'hold', 'parts': {}}}")).get(0);
        Outcome outcome = new Optimum(relations, Space.of(relations).folded("frame")).seek(OptimumTest.demands(relations, build, Set.of()), Effort.unbounded());
        Outcome.Found found = (Outcome.Found) outcome;
        assertTrue(found.proved());
        return found;
    }

    private static fettle.document.Document document(String json) {
        return Documents.content("c.json", json.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    private static void assertBest(String parts, String benefit, Outcome.Found found) {
        assertEquals(parts, found.build().paths().toString());
        assertEquals(benefit, found.benefit().toBigIntegerExact().toString());
    }

    @Test
    void the_greatest_times_a_large_weight() {
        assertBest("{a=beam}", "10000000001000000000",
                best("'combine': 'max'", "{'grip': 1000000000}", "", "'grip': 10000000000", "'grip': 10000000001"));
        // what adds up decides among those whose greatest is the same
        assertBest("{a=bar, b=beam}", "10000000000000000003",
                best("'combine': 'max'", "{'grip': 1000000000, 'poise': 1}", "", "'grip': 10000000000, 'poise': 1", "'grip': 3, 'poise': 2"));
    }

    @Test
    void the_least_times_a_large_weight() {
        assertBest("{}", "10000",
                best("'combine': 'min'", "{'grip': 10000}", "", "'grip': -1000000000000000", "'grip': -1000000000000001"));
        assertBest("{a=beam, b=beam}", "10006", best("'combine': 'min'", "{'grip': 10000, 'poise': 3}", "", "'grip': -1000000000000000, 'poise': 5", "'poise': 1"));
    }

    @Test
    void the_product_times_a_weight() {
        assertBest("{a=bar, b=bar}", "300000000000060000000000003",
                best("'combine': 'product'", "{'grip': 3}", "", "'grip': 1000000000000000", "'grip': 999999999999999"));
    }

    @Test
    void a_limit_by_a_line_to_a_point_far_away() {
        // they weigh 20, and may weigh ten times their poise; at no rate on weight do other parts serve best in one slot than in the other
        assertBest("{a=bar, b=beam}", "15",
                best("'combine': 'sum'", "{'grip': 1}",
                        "{'id': 'carry', 'attribute': 'mass', 'atMost': {'by': 'poise', 'points': [[0, 0], [1e20, 1e21]]}}",
                        "'grip': 5, 'mass': 8, 'poise': 1", "'grip': 9, 'mass': 12, 'poise': 1"));
    }
}
