package fettle.space.best;

import java.util.Set;
import java.util.TreeSet;

/** Says that paths were to keep their part, and hold none. */
public final class NothingKept extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Set<String> paths;

    NothingKept(Set<String> paths) {
        super("nothing to keep at " + String.join(", ", new TreeSet<>(paths)));
        this.paths = Set.copyOf(paths);
    }

    /** The paths that hold nothing. */
    public Set<String> paths() {
        return new TreeSet<>(paths);
    }
}
