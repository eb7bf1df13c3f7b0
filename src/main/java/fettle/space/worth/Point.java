package fettle.space.worth;

import java.util.List;

/**
 * One choice out of a node of the circuit without slots.
 *
 * @param parts how many parts are in it
 * @param made what it is made of
 */
record Point(Yield yield, int parts, Made made) {

    /** What a choice is made of. */
    sealed interface Made {

        /** Nothing. */
        record Nothing() implements Made {}

        /** A part with a choice on it. */
        record On(Point on) implements Made {}

        /** Choices out of both of two nodes. */
        record Both(Point one, Point other) implements Made {}

        /** One choice for each of several copies of a node. */
        record Several(List<Point> each) implements Made {}

        /** A choice out of one of the nodes of a sum. */
        record Among(int alternative, Point of) implements Made {}
    }
}
