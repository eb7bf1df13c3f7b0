package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.oracle.BestBuild;
import fettle.oracle.Entries;
import fettle.oracle.RandomBuilds;
import fettle.oracle.Scene;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.space.Placement;
import fettle.space.Prices;
import fettle.space.Space;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.statistics.Statistics;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The best build is the one that looking at every valid build finds, to the last tie. */
class OptimumTest {

    private static final int MOST_CANDIDATES = 2_000;
    private static final RuleBase RULES = RuleBase.builtIn();

    @Provide
    static Arbitrary<RandomBuilds.Review> reviews() {
        return RandomBuilds.reviews(MOST_CANDIDATES);
    }

    @Property(tries = 400, shrinking = ShrinkingMode.BOUNDED)
    void agrees_with_brute_force(@ForAll("reviews") RandomBuilds.Review review, @ForAll long seed) {
        Random random = new Random(seed);
        Relations relations = Deriver.derive(RULES, catalog(review.catalog()));
        ObjectNode written = demanding(review, random);
        Build build = build(written);
        Entries entries = review.scene().entries();
        Optional<fettle.oracle.Space> space = review.scene().spaces().stream().filter(each -> each.platform().equals(build.platform().id())).findFirst();
        if (space.isEmpty()) {
            return;
        }
        Placement before = Placement.of(relations, build.platform().id(), build.parts());
        Set<String> keep = before.parts().stream().map(part -> part.path()).filter(unused -> random.nextInt(6) == 0)
                .collect(Collectors.toCollection(TreeSet::new));
        fettle.oracle.Demands demands;
        Optional<BestBuild> expected;
        try {
            demands = fettle.oracle.Demands.of(entries, written, "", keep);
            expected = BestBuild.of(space.get(), demands);
        } catch (IllegalArgumentException otherPaths) {
            // A slot that holds more than it may has other paths there.
            keep = Set.of();
            demands = fettle.oracle.Demands.of(entries, written, "", keep);
            expected = BestBuild.of(space.get(), demands);
        }
        Outcome outcome = new Optimum(relations, Space.of(relations).folded(build.platform().id())).seek(demands(relations, build, keep), Effort.unbounded());
        Statistics.collect(expected.isPresent() ? "found" : "nothing");
        Statistics.coverage(share -> share.check("found").percentage(percent -> percent > 25));
        if (expected.isEmpty()) {
            assertInstanceOf(Outcome.Nothing.class, outcome);
            return;
        }
        cutShort(new Optimum(relations, Space.of(relations).folded(build.platform().id())), demands(relations, build, keep), random.nextInt(3), expected.get());
        Outcome.Found found = assertInstanceOf(Outcome.Found.class, outcome);
        assertTrue(found.proved());
        assertEquals(0, expected.get().benefit().compareTo(found.benefit()), () -> found + " for " + written);
        assertEquals(0, expected.get().cost().compareTo(found.cost()), () -> found + " for " + written);
        assertEquals(expected.get().changed(), found.changed(), () -> found + " for " + written);
        assertEquals(expected.get().paths(), found.build().paths(), () -> found + " for " + written);
    }

    /** However early it is cut short, the best build is within the bound, and what is found is no better. */
    private static void cutShort(Optimum optimum, Demands demands, int looks, BestBuild best) {
        AtomicLong clock = new AtomicLong();
        Outcome outcome = optimum.seek(demands, Effort.of(Duration.ofNanos(looks), clock::getAndIncrement));
        if (outcome instanceof Outcome.CutShort cut) {
            assertTrue(cut.bound().orElseThrow().compareTo(best.benefit()) >= 0, () -> cut + ", but " + best.benefit());
            return;
        }
        Outcome.Found found = assertInstanceOf(Outcome.Found.class, outcome);
        assertTrue(found.bound().compareTo(best.benefit()) >= 0, () -> found + ", but " + best.benefit());
        assertTrue(found.benefit().compareTo(best.benefit()) <= 0);
    }

    /** The build with a lens of the catalog, and sometimes with little money, worn gear and owned parts. */
    static ObjectNode demanding(RandomBuilds.Review review, Random random) {
        ObjectNode written = (ObjectNode) review.build().deepCopy();
        JsonNode lenses = review.catalog().path("lenses");
        written.put("lens", lenses.get(random.nextInt(lenses.size())).path("id").asString());
        if (random.nextInt(2) == 0) {
            written.put("budget", new BigDecimal(random.nextInt(40)));
        }
        if (random.nextInt(3) == 0) {
            JsonNode outfits = review.catalog().path("outfits");
            written.put("outfit", outfits.get(random.nextInt(outfits.size())).path("id").asString());
        }
        if (random.nextInt(3) == 0) {
            JsonNode access = review.catalog().path("access");
            written.put("access", access.get(random.nextInt(access.size())).path("id").asString());
        }
        if (random.nextInt(2) == 0) {
            JsonNode parts = review.catalog().path("parts");
            written.putArray("owned").add(parts.get(random.nextInt(parts.size())).path("id").asString());
        }
        return written;
    }

    static Demands demands(Relations relations, Build build, Set<String> keep) {
        Catalog catalog = relations.catalog();
        return new Demands(
                build.lens().map(lens -> catalog.lenses().get(lens.id())),
                Optional.of(new Prices(catalog, build.access().map(access -> catalog.access().get(access.id())))),
                build.budget(),
                build.outfit().map(outfit -> catalog.outfits().get(outfit.id())),
                build.owned().stream().map(Build.Located::id).collect(Collectors.toSet()),
                build.loaded(),
                Optional.of(Placement.of(relations, build.platform().id(), build.parts())),
                keep,
                List.copyOf(catalog.limits().values()));
    }

    static Catalog catalog(JsonNode json) {
        return CatalogReader.read(List.of(Documents.content("catalog.json", json.toString().getBytes(StandardCharsets.UTF_8))));
    }

    static Build build(JsonNode json) {
        String text = "{\"build\": " + json + "}";
        return BuildReader.read(Documents.content("build.json", text.getBytes(StandardCharsets.UTF_8))).get(0);
    }
}
