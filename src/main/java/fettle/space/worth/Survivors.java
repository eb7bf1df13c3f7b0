package fettle.space.worth;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What assemblies brought that were found, with much work, to be dominated by none in some slot; they are tried in other slots before that work is done again. */
final class Survivors {

    private static final int KEPT = 8;

    private final Map<Integer, Deque<Yield>> byHead = new HashMap<>();

    /** Of a head, the latest first. */
    List<Yield> of(int head) {
        Deque<Yield> kept = byHead.get(head);
        return kept == null ? List.of() : List.copyOf(kept);
    }

    void keep(int head, Yield yield) {
        Deque<Yield> kept = byHead.computeIfAbsent(head, unused -> new ArrayDeque<>());
        kept.removeIf(known -> known.small() == yield.small());
        kept.addFirst(yield);
        if (kept.size() > KEPT) {
            kept.removeLast();
        }
    }
}
