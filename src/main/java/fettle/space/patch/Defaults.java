package fettle.space.patch;

import fettle.document.Document;
import fettle.document.Documents;
import fettle.document.Node;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** The values that the catalog's schema names as those of properties left out, so that writing one out is no change. */
final class Defaults {

    private static final String SCHEMA = "/schema/catalog.schema.json";

    private final Map<String, Set<String>> texts = new HashMap<>();

    private Defaults(Document schema) {
        schema.root().ifPresent(this::gather);
    }

    /** Those of the schema that the program carries. */
    static Defaults ofSchema() {
        return Holder.DEFAULTS;
    }

    /** Whether a property that states this might as well have been left out. */
    boolean states(String property, Node value) {
        return texts.getOrDefault(property, Set.of()).contains(Statements.text(value));
    }

    private void gather(Node node) {
        if (node instanceof Node.Arr list) {
            list.items().forEach(this::gather);
        } else if (node instanceof Node.Obj object) {
            object.members().forEach((name, member) -> {
                if (member.value() instanceof Node.Obj property && property.members().containsKey("default")) {
                    texts.computeIfAbsent(name, unused -> new HashSet<>()).add(Statements.text(property.members().get("default").value()));
                }
                gather(member.value());
            });
        }
    }

    /** Read on first use, and only then. */
    private static final class Holder {
        private static final Defaults DEFAULTS = load();

        private static Defaults load() {
            try (InputStream schema = Defaults.class.getResourceAsStream(SCHEMA)) {
                if (schema == null) {
                    throw new IllegalStateException("the program was packaged without " + SCHEMA);
                }
                return new Defaults(Documents.content(SCHEMA, schema.readAllBytes()));
            } catch (IOException broken) {
                throw new UncheckedIOException(broken);
            }
        }
    }
}
