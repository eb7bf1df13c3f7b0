package fettle.space;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * A circuit with the slots left out. What may stand in two slots, or on two hosts, is the same here where only the slots are others, so that whatever hangs on the
 * parts alone is worked out once for all of them.
 */
public final class Bare {

    private final Circuit slotted;
    private final Circuit circuit = new Circuit();
    /** By node of the circuit with slots. */
    private final int[] known;

    /** One to which nothing has been carried over yet; not for several threads. */
    public Bare(Circuit slotted) {
        this.slotted = slotted;
        this.known = new int[slotted.size()];
        Arrays.fill(known, Circuit.NONE);
    }

    /** The circuit without slots; what stands side by side in it is in one order, whatever slots it is in. */
    public Circuit circuit() {
        return circuit;
    }

    /** What a node of the circuit with slots is here. */
    public int of(int node) {
        int found = known[node];
        return found == Circuit.NONE ? make(node) : found;
    }

    private int make(int root) {
        Deque<Integer> open = new ArrayDeque<>(List.of(root));
        while (!open.isEmpty()) {
            int node = open.peek();
            int before = open.size();
            if (known[node] == Circuit.NONE) {
                push(node, open);
                if (open.size() > before) {
                    continue;
                }
                known[node] = made(node);
            }
            open.pop();
        }
        return known[root];
    }

    private void push(int node, Deque<Integer> open) {
        switch (slotted.kind(node)) {
            case ONE -> { }
            case PART, SLOT -> pushUnknown(slotted.second(node), open);
            case SEVERAL -> pushUnknown(slotted.first(node), open);
            case BOTH -> {
                pushUnknown(slotted.first(node), open);
                pushUnknown(slotted.second(node), open);
            }
            case EITHER -> {
                for (int i = 0; i < slotted.width(node); i++) {
                    pushUnknown(slotted.alternative(node, i), open);
                }
            }
        }
    }

    private void pushUnknown(int node, Deque<Integer> open) {
        if (known[node] == Circuit.NONE) {
            open.push(node);
        }
    }

    private int made(int node) {
        int first = slotted.first(node);
        int second = slotted.second(node);
        return switch (slotted.kind(node)) {
            case ONE -> Circuit.ONE;
            case PART -> circuit.part(first, known[second]);
            case SLOT -> known[second];
            case SEVERAL -> circuit.several(known[first], second);
            case BOTH -> {
                List<Integer> factors = factors(known[first]);
                factors.addAll(factors(known[second]));
                yield factors.stream().sorted().reduce(Circuit.ONE, circuit::both);
            }
            case EITHER -> {
                int[] alternatives = new int[slotted.width(node)];
                Arrays.setAll(alternatives, i -> known[slotted.alternative(node, i)]);
                int[] different = Arrays.stream(alternatives).sorted().distinct().toArray();
                yield circuit.either(different, different.length);
            }
        };
    }

    /** What stands side by side in a node of the circuit without slots. */
    public List<Integer> factors(int bare) {
        List<Integer> factors = new ArrayList<>();
        Deque<Integer> open = new ArrayDeque<>(List.of(bare));
        while (!open.isEmpty()) {
            int node = open.pop();
            if (circuit.kind(node) == Circuit.Kind.BOTH) {
                open.push(circuit.second(node));
                open.push(circuit.first(node));
            } else if (node != Circuit.ONE) {
                factors.add(node);
            }
        }
        return factors;
    }
}
