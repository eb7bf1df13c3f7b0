package fettle.judgement;

import fettle.catalog.Entry;

/**
 * An entry that nothing names, where several name one that isn't there and is spelt much the same.
 *
 * @param mentions how many name what isn't there
 */
public record Misnamed(Entry entry, int mentions) {

    /** The entry in words. */
    public String shown() {
        return "the " + entry.what() + " " + entry.id();
    }
}
