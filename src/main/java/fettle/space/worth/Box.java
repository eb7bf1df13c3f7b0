package fettle.space.worth;

import java.util.List;

/** A set of assemblies with the same head: every way of deciding the factors. */
record Box(Yield head, List<Factor> factors) {

    Box {
        factors = List.copyOf(factors);
    }

    /** Whether one assembly is left. */
    boolean decided() {
        for (Factor factor : factors) {
            if (!factor.decided()) {
                return false;
            }
        }
        return true;
    }
}
