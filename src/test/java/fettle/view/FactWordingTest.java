package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.catalog.Fact;
import fettle.catalog.Part;
import fettle.document.Document;
import fettle.document.Documents;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class FactWordingTest {

    private final Catalog catalog = CatalogReader.read(Documents.catalog(Shown.FOLDER.resolve("tidemill")).documents());

    @Test
    void every_sort_of_fact_is_put_into_one_plain_sentence() {
        List<Fact> facts = facts();
        Set<String> missing = Arrays.stream(Fact.class.getPermittedSubclasses()).map(Class::getSimpleName).collect(Collectors.toCollection(TreeSet::new));
        facts.forEach(fact -> missing.remove(fact.getClass().getSimpleName()));
        assertEquals(Set.of(), missing, "the catalog of this test has no fact of these sorts");

        FactWording wording = new FactWording(catalog);
        String told = facts.stream()
                .map(fact -> fact.getClass().getSimpleName() + ": " + wording.of(fact))
                .distinct().sorted().collect(Collectors.joining("\n", "", "\n"));
        Shown.equalsFile("facts.txt", told);
    }

    @Test
    void no_sentence_ends_in_a_full_stop_or_shows_how_it_was_made() {
        FactWording wording = new FactWording(catalog);
        for (Fact fact : facts()) {
            String told = wording.of(fact);
            boolean quotes = told.startsWith("a waiver") || told.startsWith("constraint");
            assertFalse(told.endsWith(".") && !quotes, told);
            assertFalse(told.contains("Optional") || told.contains("null") || told.contains("[") || told.contains("{"), told);
        }
    }

    private List<Fact> facts() {
        List<Fact> facts = new ArrayList<>(catalog.heads());
        for (Collection<? extends Fact> entries : List.of(
                catalog.attributes().values(), catalog.constraints().values(), catalog.currencies().values(), catalog.vendors().values(), catalog.goods().values(),
                catalog.offers(), catalog.access().values(), catalog.outfits().values(), catalog.limits().values(), catalog.lenses().values(), catalog.waivers(),
                catalog.entries(), catalog.references())) {
            facts.addAll(entries);
        }
        catalog.offers().forEach(offer -> facts.addAll(offer.barter()));
        List<Part> hosts = new ArrayList<>(catalog.platforms().values());
        hosts.addAll(catalog.parts().values());
        for (Part part : hosts) {
            facts.add(part);
            for (Collection<? extends Fact> stated : List.of(
                    part.mounts(), part.stats().values(), part.loaded().values(), part.slots(), part.names(), part.traits(), part.claims(), part.blocks(),
                    part.excludes(), part.needs(), part.factory())) {
                facts.addAll(stated);
            }
            part.slots().forEach(slot -> {
                facts.addAll(slot.mounts());
                facts.addAll(slot.accepts());
                facts.addAll(slot.rejects());
                facts.addAll(slot.tags());
            });
        }
        for (Document document : Documents.builds(List.of(Shown.FOLDER.resolve("tidemill/builds")), InputStream.nullInputStream()).documents()) {
            for (Build build : BuildReader.read(document)) {
                facts.add(build);
                facts.addAll(build.parts());
            }
        }
        return facts;
    }
}
