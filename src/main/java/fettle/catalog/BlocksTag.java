package fettle.catalog;

import fettle.document.Origin;

/** A part keeps the slots that bear a tag from being used. */
public record BlocksTag(String part, String tag, Origin origin) implements Fact {}
