package fettle.judgement;

import fettle.catalog.Part;

/** A platform that has no valid build. */
public record VoidPlatform(Part platform) {}
