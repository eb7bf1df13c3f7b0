package fettle.space;

import java.nio.IntBuffer;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/** All monitors' watches over one circuit, each set up when it is first asked for. */
final class Watches {

    private final Ground ground;
    private final Circuit circuit;
    private final Watch[] watches;
    private final Map<Integer, int[]> partsIn = new HashMap<>();
    private final Map<IntBuffer, int[]> shared = new HashMap<>();

    Watches(Ground ground, Circuit circuit) {
        this.ground = ground;
        this.circuit = circuit;
        this.watches = new Watch[ground.monitors().count()];
    }

    /** The same numbers, kept but once: very many questions have one answer. */
    int[] shared(int[] numbers) {
        return shared.computeIfAbsent(IntBuffer.wrap(numbers), unused -> numbers);
    }

    Circuit circuit() {
        return circuit;
    }

    Watch of(int monitor) {
        if (watches[monitor] == null) {
            watches[monitor] = new Watch(ground, circuit, monitor);
        }
        return watches[monitor];
    }

    /** The nodes of the parts that stand directly in a slot with these contents, in rising order. */
    int[] partsIn(int contents) {
        int[] known = partsIn.get(contents);
        if (known == null) {
            IntStack found = new IntStack();
            IntTable seen = new IntTable();
            IntStack open = new IntStack();
            open.push(contents);
            while (!open.isEmpty()) {
                int node = open.pop();
                if (seen.get(node) == IntTable.NONE) {
                    seen.put(node, 0);
                    switch (circuit.kind(node)) {
                        case PART -> found.push(node);
                        case BOTH -> {
                            open.push(circuit.first(node));
                            open.push(circuit.second(node));
                        }
                        case SEVERAL -> open.push(circuit.first(node));
                        case EITHER -> {
                            for (int i = 0; i < circuit.width(node); i++) {
                                open.push(circuit.alternative(node, i));
                            }
                        }
                        case ONE, SLOT -> { }
                    }
                }
            }
            known = found.toArray();
            Arrays.sort(known);
            partsIn.put(contents, known);
        }
        return known;
    }
}
