package fettle.catalog;

import fettle.document.Origin;
import java.util.Optional;

/** A part answers to a selector: its own id, its kind, or one of its tags. */
public record HasName(String part, String name, Origin origin) implements Fact {

    /** The tag, where it answers by one. */
    public Optional<String> tag() {
        Selector selector = new Selector(name, origin);
        return selector.section().equals("tags") ? Optional.of(selector.target()) : Optional.empty();
    }
}
