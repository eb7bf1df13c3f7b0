package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.oracle.RandomBuilds;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Catalogs;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

/** Swaps made one after the other, worked by hand, and those of random builds against all that there are. */
class UpgradingTest {

    private static final RuleBase RULES = RuleBase.builtIn();

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
        return new Improving(RELATIONS).of(build, RELATIONS.catalog().lenses().get("hold"), Set.of(), most, Effort.unbounded(), Effort.unbounded()).steps().swaps().stream()
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

    @Provide
    static Arbitrary<RandomBuilds.Review> reviews() {
        return RandomBuilds.reviews(300);
    }

    @Property(tries = 300, shrinking = ShrinkingMode.BOUNDED)
    void no_sequence_gains_more_than_what_is_called_proved(@ForAll("reviews") RandomBuilds.Review review, @ForAll long seed) {
        Random random = new Random(seed);
        Relations relations = Deriver.derive(RULES, OptimumTest.catalog(review.catalog()));
        Build build = OptimumTest.build(OptimumTest.demanding(review, random));
        if (new BuildCheck(relations).check(build).placement().isEmpty()) {
            return;
        }
        Improving improving = new Improving(relations);
        int most = random.nextInt(4) == 0 ? 1 : 2;
        Improvement improvement = improving.of(build, relations.catalog().lenses().get(build.lens().orElseThrow().id()), Set.of(), most, Effort.unbounded(), Effort.unbounded());
        BigDecimal gained = BigDecimal.ZERO;
        for (Swap swap : improvement.steps().swaps()) {
            assertTrue(swap.gain().signum() > 0 && swap.sound() && improvement.affordable(swap), () -> swap + " of " + improvement.before().build());
            gained = gained.add(swap.gain());
        }
        assertTrue(improvement.steps().swaps().size() <= most);
        BigDecimal best = most(improving, improvement, improvement.before(), most);
        Statistics.collect(improvement.steps().proved() ? "proved" : "sought", Math.min(improvement.steps().swaps().size(), most));
        Statistics.coverage(share -> share.check("proved", 2).count(count -> count > 0));
        assertTrue(best.compareTo(gained) >= 0);
        if (improvement.steps().proved()) {
            assertEquals(0, best.compareTo(gained), best + " instead of " + gained + " by " + most + " swaps of " + improvement.before().build());
        }
    }

    private static Optional<Arrangement> goal(Improvement improvement) {
        return improvement.outcome() instanceof Outcome.Found found ? Optional.of(found.build()) : Optional.empty();
    }

    /** The most that so many swaps one after the other gain. */
    private static BigDecimal most(Improving improving, Improvement improvement, BuildResult from, int swaps) {
        BigDecimal most = BigDecimal.ZERO;
        if (swaps > 0) {
            for (Swap swap : improving.swaps(from, improvement.weighing(), goal(improvement)).swaps()) {
                if (swap.gain().signum() > 0 && swap.sound() && improvement.affordable(swap)) {
                    most = most.max(swap.gain().add(most(improving, improvement, swap.after(), swaps - 1)));
                }
            }
        }
        return most;
    }
}
