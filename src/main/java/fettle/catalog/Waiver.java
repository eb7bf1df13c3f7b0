package fettle.catalog;

import fettle.document.Origin;

import java.util.Optional;

/** A finding that the maintainers have looked at and accept, with their reason; {@code until} names the patch that ends it. */
public record Waiver(String rule, String subject, String because, Optional<String> until, Origin origin) implements Fact {}
