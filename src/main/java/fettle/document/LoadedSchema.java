package fettle.document;

import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;

/** One of the published schemas, ready to check documents and to word what it finds. */
final class LoadedSchema {
    private final Node text;
    private final Schema validator;

    private LoadedSchema(Node text, Schema validator) {
        this.text = text;
        this.validator = validator;
    }

    static LoadedSchema load(String name, SchemaRegistry registry) {
        try (InputStream stream = LoadedSchema.class.getResourceAsStream("/schema/" + name)) {
            if (stream == null) {
                throw new IllegalStateException("the program lacks its schema " + name);
            }
            Node text = DocumentFile.read(name, stream).root()
                    .orElseThrow(() -> new IllegalStateException("the program's schema " + name + " cannot be read"));
            return new LoadedSchema(text, registry.getSchema(JacksonTree.of(text)));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    List<SchemaProblem> check(Document document) {
        if (document.root().isEmpty()) {
            return List.of();
        }
        List<Error> errors = validator.validate(JacksonTree.of(document.root().get()));
        return errors.isEmpty() ? List.of() : new SchemaWording(text, document, document.root().get()).problems(errors);
    }
}
