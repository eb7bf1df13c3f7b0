package fettle.space.worth;

/** One choice out of a node of the circuit, put together from those of the nodes below; shares what it is made of with others. */
sealed interface Pick {

    /** Nothing placed. */
    Pick NOTHING = new Nothing();

    /** Nothing placed. */
    record Nothing() implements Pick {}

    /** A part with what is on it. */
    record Headed(int part, Pick on) implements Pick {}

    /** What is in a slot. */
    record InSlot(int slot, Pick held) implements Pick {}

    /** Two side by side. */
    record Both(Pick one, Pick other) implements Pick {}

    static Pick both(Pick one, Pick other) {
        return one == NOTHING ? other : other == NOTHING ? one : new Both(one, other);
    }
}
