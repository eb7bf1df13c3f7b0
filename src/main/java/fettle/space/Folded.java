package fettle.space;

import fettle.catalog.SlotId;
import java.util.List;
import java.util.Optional;

/**
 * The valid builds of a platform as a circuit.
 *
 * @param root the node of all its builds; {@link Circuit#NONE} where it has none, or where the work was broken off
 * @param hosts the ids behind the circuit's part numbers
 * @param slots the names behind the circuit's slot numbers
 * @param undecided why the work was broken off, where it was
 */
public record Folded(
        String platform, Circuit circuit, int root, List<String> hosts, List<SlotId> slots, Optional<Undecided> undecided) {

    /** Whether it is certain that the platform has no valid build. */
    public boolean isVoid() {
        return root == Circuit.NONE && undecided.isEmpty();
    }

    /** What an algebra says of all builds, of which there are some. */
    <V> V ask(Algebra<V> algebra) {
        return Evaluation.of(circuit, algebra, Sweep.of(circuit, root)).of(root);
    }
}
