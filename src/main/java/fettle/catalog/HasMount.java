package fettle.catalog;

import fettle.document.Origin;

/** A part can be attached by a mounting standard. */
public record HasMount(String part, String mount, Origin origin) implements Fact {}
