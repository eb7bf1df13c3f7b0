package fettle.catalog;

import fettle.document.Origin;

import java.util.List;

/** A part needs another part that one of the selectors names; {@code group} counts a part's needs from 0. */
public record Needs(String part, int group, List<Selector> anyOf, Origin origin) implements Fact {}
