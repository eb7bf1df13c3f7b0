package fettle.space.best;

/**
 * A demand that every build within the limits meets, though not only those: what the parts bring sums to no more than is allowed.
 *
 * @param byPart by part number
 */
record Row(long[] byPart, long allowed) {}
