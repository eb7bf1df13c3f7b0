package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.benchmark.BenchmarkCatalog;
import fettle.catalog.CatalogReader;
import fettle.document.Document;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.sat.Encoding;
import fettle.sat.Solver;
import java.math.BigInteger;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;

/** Where there are too many builds to look at each, a library for propositional logic finds the same counts, dead and essential parts and dead slots. */
class SatAgreementTest {

    private static final int MOST_COUNTED = 60;
    private static final int MOST_VARIABLES = 150;
    private static final int MOST_ASKED = 5_000;

    /** Catalogs with a platform that is too large for brute force, and can still be counted by the library. */
    @Provide
    static Arbitrary<String> catalogs() {
        return Arbitraries.randomValue(random -> {
            while (true) {
                String json = RandomCatalog.json(random, 9);
                if (!SmallCatalogs.small(json) && !countable(json).isEmpty()) {
                    return json;
                }
            }
        });
    }

    private static List<Encoding> countable(String json) {
        Relations relations = Catalogs.relations(json);
        Entries entries = Entries.of(JsonText.read(json));
        return entries.platformIds().stream().filter(platform -> !fettle.oracle.Space.small(entries, platform, SmallCatalogs.MOST_CANDIDATES))
                .flatMap(platform -> encoding(relations, platform).stream()).toList();
    }

    private static Optional<Encoding> encoding(Relations relations, String platform) {
        try {
            return Optional.of(Encoding.of(relations, platform, MOST_COUNTED)).filter(encoding -> encoding.variables() <= MOST_VARIABLES);
        } catch (Encoding.TooLarge | UnsupportedOperationException tooHard) {
            return Optional.empty();
        }
    }

    @Property(tries = 30, shrinking = ShrinkingMode.OFF)
    void surveys_of_random_catalogs_agree(@ForAll("catalogs") String json) {
        Relations relations = Catalogs.relations(json);
        for (Encoding encoding : countable(json)) {
            BigInteger count = agreed(relations, encoding).count();
            assertEquals(count, new Solver(encoding).count(count), encoding.platform());
        }
    }

    @Example
    void surveys_of_the_demo_agree() {
        Relations relations = relations(Documents.catalog(Path.of("catalog/marrowdyke")).documents());
        BigInteger most = BigInteger.ZERO;
        for (String platform : relations.catalog().platforms().keySet()) {
            most = most.max(agreed(relations, Encoding.of(relations, platform, MOST_ASKED)).count());
        }
        assertTrue(most.bitLength() > 60, "as large as is claimed");
        Encoding teal = Encoding.of(relations, "teal", MOST_ASKED);
        BigInteger count = agreed(relations, teal).count();
        assertEquals(count, new Solver(teal).count(count));
    }

    @Example
    void surveys_of_a_made_up_catalog_agree() {
        Relations relations = relations(BenchmarkCatalog.documents(BenchmarkCatalog.of(new BenchmarkCatalog.Size(160, 4, 2, 0, true), 3).texts()));
        int dead = 0;
        for (String platform : relations.catalog().platforms().keySet()) {
            dead += agreed(relations, Encoding.of(relations, platform, MOST_ASKED)).dead().size();
        }
        assertTrue(dead > 0, "some part is dead");
    }

    /** The survey of the encoded platform, of which all but the count has been compared. */
    private static Survey.Known agreed(Relations relations, Encoding encoding) {
        String platform = encoding.platform();
        Survey survey = Space.of(relations).survey(List.of(platform)).get(platform);
        Survey.Known known = assertInstanceOf(Survey.Known.class, survey, survey::toString);
        Solver solver = new Solver(encoding);
        assertEquals(!known.isVoid(), solver.possible(), platform);
        assertEquals(known.reachable(), encoding.placed().keySet(), platform);
        assertEquals(known.dead(), solver.inNone(), platform);
        assertEquals(known.essential(), solver.inAll(), platform);
        assertEquals(known.deadSlots(), solver.unused(), platform);
        return known;
    }

    private static Relations relations(List<Document> documents) {
        return Deriver.derive(RuleBase.builtIn(), CatalogReader.read(documents));
    }
}
