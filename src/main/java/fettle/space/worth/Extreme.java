package fettle.space.worth;

import fettle.space.Circuit;

/** Picks the choice out of a node of the circuit that brings most in one column that adds up. */
final class Extreme {

    private final Arena arena;
    private final Circuit circuit;
    private final int column;

    Extreme(Arena arena, int column) {
        this.arena = arena;
        this.circuit = arena.circuit();
        this.column = column;
    }

    Pick of(int node) {
        return Pick.of(circuit, node, this::best);
    }

    private int best(int either) {
        int best = -1;
        for (int i = 0; i < circuit.width(either); i++) {
            int alternative = circuit.alternative(either, i);
            if (arena.ideal(alternative) != null && (best < 0 || arena.ideal(alternative).small()[column] > arena.ideal(best).small()[column])) {
                best = alternative;
            }
        }
        return best;
    }
}
