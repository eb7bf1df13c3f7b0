package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.catalog.HiddenEntries;
import fettle.document.Document;
import fettle.document.DocumentSet;
import fettle.document.Documents;
import fettle.document.Node;
import fettle.document.Places;
import fettle.document.SchemaProblem;
import fettle.document.Schemas;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;

/** A catalog as read from its directory: the documents, what is wrong with them, the entries, what of these was not read in full, and the relations derived from them. */
public record CatalogReading(DocumentSet documents, List<SchemaProblem> schemaProblems, Catalog catalog, HalfRead halfRead, Relations relations) {

    private static final String HEAD = "catalog";

    /** Reads a catalog directory; whatever can be read is. */
    public static CatalogReading of(RuleBase rules, Path directory) {
        return of(rules, Documents.catalog(directory));
    }

    /** Reads a catalog from its documents; whatever can be read is. The check against the schema runs beside all the rest, which doesn't wait for it. */
    public static CatalogReading of(RuleBase rules, DocumentSet documents) {
        CompletableFuture<List<SchemaProblem>> problems = CompletableFuture.supplyAsync(() -> schemaProblems(documents));
        Catalog catalog = CatalogReader.read(documents.documents());
        Relations relations = Deriver.derive(rules, catalog);
        return new CatalogReading(documents, problems.join(), catalog, HalfRead.of(documents, problems.join(), catalog), relations);
    }

    private static List<SchemaProblem> schemaProblems(DocumentSet documents) {
        Schemas schemas = new Schemas();
        List<SchemaProblem> problems = new ArrayList<>();
        for (Document document : documents.documents()) {
            problems.addAll(schemas.checkCatalog(document));
        }
        return List.copyOf(problems);
    }

    /** The files of which something could not be read that others may name. */
    public List<String> unread() {
        Stream<String> hiding = documents.documents().stream().filter(HiddenEntries::in).map(Document::file);
        Stream<String> misspelt = schemaProblems.stream().filter(HiddenEntries::by).map(problem -> problem.origin().file());
        return Stream.concat(hiding, misspelt).distinct().sorted().toList();
    }

    /** Whether a document holds the catalog object, or something that was to be it, however little of that could be read. */
    boolean headed() {
        return documents.documents().stream().flatMap(document -> document.root().stream()).anyMatch(root -> root instanceof Node.Obj object && object.members().containsKey(HEAD))
                || schemaProblems.stream().anyMatch(problem -> problem.meant().filter(HEAD::equals).isPresent() && problem.origin().pointer().lastIndexOf('/') == 0);
    }

    /** Where the pieces of its entries stand. */
    Places places() {
        return new Places(documents.documents());
    }

    /** What judgement rules on documents match. */
    List<Object> documentFacts() {
        List<Object> facts = new ArrayList<>(schemaProblems);
        documents.problems().forEach(facts::add);
        return facts;
    }
}
