package fettle.judgement;

import fettle.catalog.Entry;
import fettle.catalog.NameForm;

/**
 * An entry that nothing names, where several name one that isn't there and is spelt much the same; or at least one does, and the entry's own id can't be one.
 *
 * @param mentions how many name what isn't there
 */
public record Misnamed(Entry entry, int mentions) {

    /** Whether its own id is one that the schema takes. */
    public boolean fit() {
        return NameForm.fits(entry.section(), entry.id());
    }

    /** The entry in words. */
    public String shown() {
        return "the " + entry.what() + " " + entry.id();
    }
}
