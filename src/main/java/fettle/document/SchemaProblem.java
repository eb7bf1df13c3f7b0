package fettle.document;

import java.util.Objects;
import java.util.Optional;

/**
 * A place where a document departs from its schema.
 *
 * @param origin the offending value, or the name of an unknown property, or the object in which something is missing
 * @param expected what should stand there, in words that follow "expected"
 * @param found what stands there, in words that follow "found"
 * @param meant for a misspelt property, choice or selector, the known one that was probably meant
 */
public record SchemaProblem(Origin origin, String expected, String found, Optional<String> meant) {
    public SchemaProblem {
        Objects.requireNonNull(origin);
        Objects.requireNonNull(expected);
        Objects.requireNonNull(found);
        Objects.requireNonNull(meant);
    }

    /** Whether it is the key by which some YAML takes over what stands elsewhere, and which means nothing here. */
    public boolean isMerge() {
        return expected.startsWith("a property of ") && origin.pointer().endsWith("/<<");
    }

    /** Whether what can't stand in the document shows that it is a build's, and not a catalog's. */
    public boolean isBuild() {
        return expected.startsWith("a property of ") && (origin.pointer().equals("/build") || origin.pointer().equals("/builds"));
    }
}
