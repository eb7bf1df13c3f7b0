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
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.sat.Encoding;
import fettle.sat.Optimizer;
import fettle.space.Placement;
import fettle.space.Prices;
import fettle.space.Space;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * On the demo's platforms, whose builds nobody can look at one by one, a library for constraint programming finds builds of the same benefit and cost, or none either.
 * Little money, or paths that are kept, leave the library few enough to be done with in a second or so; each answer that is compared is one that it has proved.
 */
class ChocoAgreementTest {

    private static final Duration LONG_ENOUGH = Duration.ofMinutes(10);
    private static final List<String> LENSES = List.of("marsh", "quick", "settled", "hold");
    private static final Path DEMO = Path.of("catalog/marrowdyke");

    private static Relations relations;
    private static final Map<String, Encoding> ENCODINGS = new HashMap<>();

    private int found;
    private int none;

    @BeforeAll
    static void derive() {
        relations = Deriver.derive(RuleBase.builtIn(), CatalogReader.read(Documents.catalog(DEMO).documents()));
    }

    /** Compares for a demand, of which "" leaves out what is worn. */
    private void compare(String platform, String lens, String access, int budget, String outfit, Set<String> owned, Optional<Placement> before, Set<String> keep) {
        Catalog catalog = relations.catalog();
        Optional<BigDecimal> money = Optional.of(BigDecimal.valueOf(budget));
        Demands demands = new Demands(Optional.of(catalog.lenses().get(lens)), Optional.of(new Prices(catalog, Optional.of(catalog.access().get(access)))), money,
                Optional.ofNullable(catalog.outfits().get(outfit)), owned, true, before, keep, List.copyOf(catalog.limits().values()));
        Map<String, String> kept = new HashMap<>();
        before.ifPresent(placement -> placement.parts().stream().filter(part -> keep.contains(part.path())).forEach(part -> kept.put(part.path().replaceAll(":\\d+", ""), part.part())));
        Encoding encoding = ENCODINGS.computeIfAbsent(platform, unused -> Encoding.of(relations, platform, 5_000));
        Optimizer.Answer expected = new Optimizer(catalog, encoding, new Optimizer.Demand(demands.lens().orElseThrow(), true, demands.outfit(),
                Optional.of(catalog.access().get(access).vendors()), money, owned, kept)).best(LONG_ENOUGH);
        Outcome outcome = new Optimum(relations, Space.of(relations).folded(platform)).seek(demands, Effort.unbounded());
        String what = String.join(" ", platform, lens, access, Integer.toString(budget), outfit, owned.toString(), kept.toString());
        assertTrue(expected.complete(), what);
        if (expected.best().isEmpty()) {
            assertInstanceOf(Outcome.Nothing.class, outcome, what);
            none++;
            return;
        }
        Outcome.Found best = assertInstanceOf(Outcome.Found.class, outcome, what);
        assertTrue(best.proved(), what);
        assertEquals(0, expected.best().get().benefit().compareTo(best.benefit()), () -> what + ": " + expected.best().get() + ", but " + best);
        assertEquals(0, expected.best().get().cost().compareTo(best.cost()), () -> what + ": " + expected.best().get() + ", but " + best);
        found++;
    }

    private void compare(String platform, String lens, String access, int budget, String outfit) {
        compare(platform, lens, access, budget, outfit, Set.of(), Optional.empty(), Set.of());
    }

    @Test
    void for_each_lens_whatever_is_worn_and_open() {
        List<String> outfits = new ArrayList<>(relations.catalog().outfits().keySet());
        outfits.add("");
        for (String lens : LENSES) {
            for (String outfit : outfits) {
                for (String access : relations.catalog().access().keySet()) {
                    compare("teal", lens, access, 9_000, outfit);
                    compare("teal", lens, access, 1_000_000, outfit);
                }
            }
        }
        assertEquals(192, found);
    }

    @Test
    void where_money_is_short() {
        for (String lens : LENSES) {
            compare("stilt", lens, "newcomer", 30_000, "flood-suit");
            compare("wader", lens, "settled", 8_000, "tin-coat");
        }
        compare("coot", "quick", "newcomer", 8_000, "packman");
        compare("coot", "hold", "newcomer", 8_000, "mitts");
        compare("wader", "quick", "newcomer", 12_000, "");
        compare("fulmar", "settled", "settled", 16_000, "mitts");
        compare("fulmar", "hold", "settled", 16_000, "");
        compare("fulmar", "hold", "newcomer", 12_000, "shirt");
        compare("gannet", "marsh", "newcomer", 12_000, "flood-suit");
        compare("gannet", "hold", "newcomer", 8_000, "tin-coat");
        compare("redshank", "hold", "newcomer", 8_000, "tin-coat");
        assertEquals(List.of(14, 3), List.of(found, none));
    }

    @Test
    void where_much_of_a_build_is_kept_and_some_parts_are_owned() {
        around("gannet-first-ebb.yaml", "settled", 30_000, "", Set.of("hand", "bar"));
        around("gannet-first-ebb.yaml", "marsh", 60_000, "mitts", Set.of("tail"));
        around("gannet-long-reach.json", "quick", 60_000, "shirt", Set.of("hand", "bar", "tail/collar"));
        around("coot-drum.yaml", "hold", 20_000, "", Set.of("well", "hand"));
        around("fulmar-above-its-means.yaml", "marsh", 60_000, "", Set.of("hand", "side"));
        assertEquals(List.of(4, 1), List.of(found, none));
    }

    /** Compares for a build of the demo of which all is kept but what is at these paths and beyond. */
    private void around(String file, String lens, int budget, String outfit, Set<String> open) {
        Build build = BuildReader.read(Documents.builds(List.of(DEMO.resolve("builds").resolve(file)), InputStream.nullInputStream()).documents().get(0)).get(0);
        Placement before = Placement.of(relations, build.platform().id(), build.parts());
        Set<String> keep = new TreeSet<>();
        before.parts().stream().map(part -> part.path()).filter(path -> open.stream().noneMatch(free -> path.equals(free) || path.startsWith(free + "/"))).forEach(keep::add);
        compare(build.platform().id(), lens, "settled", budget, outfit, Set.of(before.parts().get(0).part()), Optional.of(before), keep);
    }
}
