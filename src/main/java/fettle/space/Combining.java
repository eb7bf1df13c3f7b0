package fettle.space;

import java.util.Arrays;

/** Puts classes of assemblies together, each of one with each of another, and keeps what some valid build can still have. */
final class Combining {

    private final Circuit circuit;
    private final Signatures signatures;
    private final Bounds bounds;
    private final Products products = new Products();
    private long work;

    Combining(Circuit circuit, Signatures signatures, Bounds bounds) {
        this.circuit = circuit;
        this.signatures = signatures;
        this.bounds = bounds;
    }

    Circuit circuit() {
        return circuit;
    }

    Signatures signatures() {
        return signatures;
    }

    /** Starts to count the work anew. */
    void reset() {
        work = 0;
    }

    /** Counts work, and breaks it off when it is too much. */
    void spend(long amount) {
        work += amount;
        if (work > bounds.work()) {
            throw new TooLarge(TooLarge.What.WORK, bounds.work());
        }
    }

    Gathering gathering() {
        return new Gathering(circuit);
    }

    /** Both together, as a lens sees them. */
    Classes both(Classes one, Classes other, Lens lens) {
        Gathering into = gathering();
        add(paired(one, other, lens), into);
        return into.classes();
    }

    /** Adds both together, as a lens sees them, to what was gathered. */
    void both(Classes one, Classes other, Lens lens, Gathering into) {
        int[] known = products.recall(one, other, lens);
        if (known == null) {
            known = paired(one, other, lens);
            products.keep(one, other, lens, known);
        } else {
            spend(known.length / 2);
        }
        add(known, into);
    }

    private void add(int[] paired, Gathering into) {
        for (int i = 0; i < paired.length; i += 2) {
            into.add(paired[i], paired[i + 1]);
        }
        if (into.size() > bounds.states()) {
            throw new TooLarge(TooLarge.What.STATES, bounds.states());
        }
    }

    /** Signatures and nodes by turns. */
    private int[] paired(Classes one, Classes other, Lens lens) {
        Classes few = one.size() <= other.size() ? one : other;
        Classes many = few == one ? other : one;
        spend((long) few.size() * many.size());
        long[] order = new long[many.size()];
        int[] partners = new int[many.size()];
        int[] paired = new int[2 * many.size()];
        int length = 0;
        for (int i = 0; i < few.size(); i++) {
            int count = 0;
            for (int j = 0; j < many.size(); j++) {
                int seen = signatures.see(lens, signatures.plus(few.signatures()[i], many.signatures()[j]));
                if (seen != Signatures.HOPELESS) {
                    order[count++] = (long) seen << 32 | j;
                }
            }
            // What leads to the same signature is added up before it is multiplied.
            Arrays.sort(order, 0, count);
            for (int from = 0; from < count;) {
                int signature = (int) (order[from] >>> 32);
                int partner = 0;
                while (from < count && (int) (order[from] >>> 32) == signature) {
                    partners[partner++] = many.nodes()[(int) order[from++]];
                }
                if (length == paired.length) {
                    paired = Arrays.copyOf(paired, 2 * length);
                }
                paired[length++] = signature;
                paired[length++] = circuit.both(few.nodes()[i], circuit.either(partners, partner));
            }
        }
        return Arrays.copyOf(paired, length);
    }
}
