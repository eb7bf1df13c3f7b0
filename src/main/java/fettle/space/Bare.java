package fettle.space;

import java.util.Arrays;
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
        IntStack open = new IntStack();
        open.push(root);
        while (!open.isEmpty()) {
            int node = open.top();
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

    private void push(int node, IntStack open) {
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

    private void pushUnknown(int node, IntStack open) {
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
            case BOTH -> both(known[first], known[second]);
            case EITHER -> {
                int[] alternatives = new int[slotted.width(node)];
                for (int i = 0; i < alternatives.length; i++) {
                    alternatives[i] = known[slotted.alternative(node, i)];
                }
                Arrays.sort(alternatives);
                int[] different = Numbers.distinct(alternatives);
                yield circuit.either(different, different.length);
            }
        };
    }

    private int both(int one, int other) {
        if (circuit.kind(one) != Circuit.Kind.BOTH && circuit.kind(other) != Circuit.Kind.BOTH) {
            return circuit.both(one, other);
        }
        IntStack factors = new IntStack();
        gather(one, factors);
        gather(other, factors);
        int[] sorted = factors.toArray();
        Arrays.sort(sorted);
        int all = Circuit.ONE;
        for (int factor : sorted) {
            all = circuit.both(all, factor);
        }
        return all;
    }

    /** What stands side by side in a node of the circuit without slots. */
    public List<Integer> factors(int bare) {
        IntStack factors = new IntStack();
        gather(bare, factors);
        return Arrays.stream(factors.toArray()).boxed().toList();
    }

    private void gather(int bare, IntStack factors) {
        IntStack open = new IntStack();
        open.push(bare);
        while (!open.isEmpty()) {
            int node = open.pop();
            if (circuit.kind(node) == Circuit.Kind.BOTH) {
                open.push(circuit.second(node));
                open.push(circuit.first(node));
            } else if (node != Circuit.ONE) {
                factors.push(node);
            }
        }
    }
}
