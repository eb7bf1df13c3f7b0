package fettle.space.best;

/** Where a total that a limit or a lens asks for is kept. */
sealed interface Quantity {

    /** It adds up: the number of its column. */
    record Added(int column) implements Quantity {}

    /** It does not: the number of its curve. */
    record Bent(int curve) implements Quantity {}

    /** It never has a value, since the platform has no base of it. */
    record Missing() implements Quantity {}
}
