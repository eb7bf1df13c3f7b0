package fettle.space.worth;

/**
 * One choice out of a node of the circuit.
 *
 * @param parts how many parts are in it
 */
record Point(Yield yield, int parts, Pick pick) {}
