package fettle.catalog;

import fettle.document.Origin;

/**
 * A mention of something by id.
 *
 * @param subject the entry that mentions it, such as {@code part:x}
 * @param space what sort of thing is meant: a section's name, {@code tags}, {@code slot tags} or {@code rules}
 * @param id the id as written, without a selector's prefix
 * @param selecting whether a selector mentions it, which could name a part, a kind or a tag alike
 */
public record Reference(String subject, String space, String id, boolean selecting, Origin origin) implements Fact {

    /** What sort of thing is meant, in the singular. */
    public String what() {
        return SectionNoun.of(space);
    }

    /** Whether an offer mentions it, however little else of that could be read. */
    public boolean ofOffer() {
        return subject.startsWith("offer:");
    }

    /** How something of the same sort is written there. */
    public String writing(String other) {
        return selecting ? Selector.naming(space, other) : other;
    }
}
