package fettle.document;

import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.path.PathType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Checks documents against the published schemas and words what is wrong. Setting a schema up costs tens of milliseconds, so it is
 * done on first use; keep one instance. Not for use by several threads at once.
 */
public final class Schemas {
    private final SchemaRegistry registry = SchemaRegistry.withDialect(SchemaKeyword.dialect(), builder -> builder
            .schemaRegistryConfig(SchemaRegistryConfig.builder().pathType(PathType.JSON_POINTER).build()));
    private Optional<LoadedSchema> catalog = Optional.empty();
    private Optional<LoadedSchema> build = Optional.empty();

    /** Returns where a catalog document departs from its schema, in reading order; nothing where it has no root. */
    public List<SchemaProblem> checkCatalog(Document document) {
        if (catalog.isEmpty()) {
            catalog = Optional.of(LoadedSchema.load("catalog.schema.json", registry));
        }
        List<SchemaProblem> problems = new ArrayList<>(catalog.get().check(document));
        document.root().ifPresent(root -> problems.addAll(RisingPoints.check(root)));
        return inReadingOrder(problems);
    }

    /** Returns where a build document departs from its schema, in reading order; nothing where it has no root. */
    public List<SchemaProblem> checkBuild(Document document) {
        if (build.isEmpty()) {
            build = Optional.of(LoadedSchema.load("build.schema.json", registry));
        }
        return inReadingOrder(build.get().check(document));
    }

    private static List<SchemaProblem> inReadingOrder(List<SchemaProblem> problems) {
        List<SchemaProblem> sorted = new ArrayList<>(problems);
        sorted.sort((left, right) -> {
            int byPlace = left.origin().compareTo(right.origin());
            return byPlace != 0 ? byPlace : left.expected().compareTo(right.expected());
        });
        return List.copyOf(sorted);
    }
}
