package fettle.catalog;

import fettle.document.Origin;

import java.util.List;

/** A part works with these values of a trait. */
public record DeclaresTrait(String part, String trait, List<String> values, Origin origin) implements Fact {}
