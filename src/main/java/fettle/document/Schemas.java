package fettle.document;

import java.util.List;

/** Checks documents against the published schemas and words what is wrong. */
public final class Schemas {
    /** Returns where a catalog document departs from its schema, in reading order; nothing where it has no root. */
    public List<SchemaProblem> checkCatalog(Document document) {
        throw new UnsupportedOperationException("schemas are not there yet");
    }

    /** Returns where a build document departs from its schema, in reading order; nothing where it has no root. */
    public List<SchemaProblem> checkBuild(Document document) {
        throw new UnsupportedOperationException("schemas are not there yet");
    }
}
