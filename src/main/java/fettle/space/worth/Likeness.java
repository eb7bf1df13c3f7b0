package fettle.space.worth;

/** How two parts without slots that have equal roles and figures stand to each other in a slot. */
public enum Likeness {

    /** Each can be swapped for the other in every valid build. */
    TWINS,

    /** Each could, were it not that both can be there, side by side, and neither twice. */
    SIDE_BY_SIDE,

    /** Some valid build doesn't bear a swap for another reason. */
    APART
}
