package fettle.judgement;

import fettle.catalog.Waiver;

/**
 * What became of a waiver.
 *
 * @param used whether a finding of its rule and subject was drawn
 * @param expired whether the catalog has reached the patch that ends it
 */
public record WaiverUse(Waiver waiver, boolean used, boolean expired) {}
