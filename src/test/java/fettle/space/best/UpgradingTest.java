package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.document.Documents;
import fettle.relation.Relations;
import fettle.space.Catalogs;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Swaps made one after the other, worked by hand. */
class UpgradingTest {

    private static final Relations RELATIONS = Catalogs.relations("""
            {'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'},
             'currencies': [{'id': 'scrip', 'rate': 1}],
             'attributes': [{'id': 'grip', 'unit': 'pt', 'better': 'higher', 'combine': 'sum', 'decimals': 1, 'shown': 0}],
             'kinds': [{'id': 'k'}], 'vendors': [{'id': 'market', 'tiers': 0}],
             'lenses': [{'id': 'hold', 'weights': {'grip': 1}}],
             'platforms': [{'id': 'frame', 'slots': [{'id': 'front', 'accepts': ['tag:front']}, {'id': 'rear', 'accepts': ['tag:rear']}, {'id': 'top', 'accepts': ['tag:top']}]}],
             'parts': [{'id': 'ram', 'kind': 'k', 'tags': ['front'], 'stats': {'grip': 10}},
                       {'id': 'butt', 'kind': 'k', 'tags': ['rear'], 'stats': {'grip': 7}},
                       {'id': 'comb', 'kind': 'k', 'tags': ['top'], 'stats': {'grip': 6}}],
             'offers': [{'part': 'ram', 'vendor': 'market', 'price': 100}, {'part': 'butt', 'vendor': 'market', 'price': 50}, {'part': 'comb', 'vendor': 'market', 'price': 50}]}
            """);

    private static List<String> steps(int most, String budget) {
        String json = "{'build': {'id': 'b', 'platform': 'frame', 'patch': '1', 'lens': 'hold'" + budget + ", 'parts': {}}}";
        Build build = BuildReader.read(Documents.content("build.json", json.replace('\'', '"').getBytes(StandardCharsets.UTF_8))).get(0);
        return new Improving(RELATIONS).of(build, RELATIONS.catalog().lenses().get("hold"), Set.of(), most, Effort.unbounded()).steps().stream()
                .map(swap -> swap.path() + "=" + swap.to().get("")).toList();
    }

    @Test
    void two_swaps_for_the_money_come_before_one_that_takes_all_of_it() {
        assertEquals(List.of("rear=butt", "top=comb"), steps(2, ", 'budget': 100"));
    }

    @Test
    void with_one_swap_to_make_it_is_the_one_that_gains_most() {
        assertEquals(List.of("front=ram"), steps(1, ", 'budget': 100"));
    }

    @Test
    void what_gains_most_is_made_first_and_nothing_is_made_that_gains_nothing() {
        assertEquals(List.of("front=ram", "rear=butt"), steps(2, ""));
        assertEquals(List.of("front=ram", "rear=butt", "top=comb"), steps(5, ""));
    }
}
