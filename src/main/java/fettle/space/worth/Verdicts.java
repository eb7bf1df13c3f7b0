package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Swaps;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;

/** How each part stands in all slots that hold the same, by one way of comparing: what is so whatever stands around is found once for all. */
final class Verdicts {

    /** In how many slots a part is left undecided, where all have to be quick, before it is in the others with the same contents. */
    private static final int MOST_OPEN = 2;

    private final Contents contents;
    private final Arena arena;
    private final Contest contest;
    private final List<Integer> heads;
    private final SortedMap<Integer, Function<Swaps, Verdict>> verdicts = new TreeMap<>();
    private final SortedMap<Integer, Function<Swaps, Boolean>> worseThanEmpty = new TreeMap<>();

    Verdicts(Contents contents, Arena arena) {
        this.contents = contents;
        this.arena = arena;
        this.contest = new Contest(contents, arena);
        this.heads = List.copyOf(new TreeSet<>(contents.stands().stream().map(Stand::head).toList()));
    }

    private record Settled<R>(R result) implements Function<Swaps, R> {
        @Override
        public R apply(Swaps swaps) {
            return result;
        }
    }

    /** A verdict that is the same whatever stands around, or one that is to be worked out for each slot. */
    private Function<Swaps, Verdict> verdict(int head) {
        Function<Swaps, Verdict> verdict = worked(head);
        if (verdict instanceof Settled<Verdict> settled && !(settled.result() instanceof Verdict.Open)) {
            contest.forget(head);
        }
        return verdict;
    }

    private Function<Swaps, Verdict> worked(int head) {
        Verdict feared = contest.of(head, contents.supposing(false));
        if (feared instanceof Verdict.Dominated || feared instanceof Verdict.Unsold) {
            return new Settled<>(feared);
        }
        Optional<Verdict> hoped = contest.unlessDominated(head, contents.supposing(true));
        // What stands where few swaps are allowed often does where more are, though it takes too long to tell where all are.
        if (hoped.isPresent() && !(hoped.get() instanceof Verdict.Open && feared instanceof Verdict.Undominated)) {
            return new Settled<>(hoped.get());
        }
        return new SlotBySlot(head);
    }

    /** Verdicts for each slot by itself; where all have to be quick, what took too long in some slots is not tried in more. */
    private final class SlotBySlot implements Function<Swaps, Verdict> {

        private final int head;
        private final Trail<Verdict> trail = new Trail<>(contents);
        private final List<Verdict> open = new ArrayList<>();

        SlotBySlot(int head) {
            this.head = head;
        }

        @Override
        public Verdict apply(Swaps swaps) {
            if (arena.hurried() && open.size() == MOST_OPEN) {
                return open.get(0);
            }
            Verdict verdict = trail.follow(swaps, tried -> contest.of(head, tried));
            if (verdict instanceof Verdict.Open && open.size() < MOST_OPEN) {
                open.add(verdict);
            }
            return verdict;
        }
    }

    /** Likewise whether it is worse than nothing. */
    private Function<Swaps, Boolean> emptiness(int head) {
        boolean feared = contest.worseThanEmpty(head, contents.supposing(false));
        if (feared || !contest.worseThanEmpty(head, contents.supposing(true))) {
            return new Settled<>(feared);
        }
        Trail<Boolean> trail = new Trail<>(contents);
        return swaps -> trail.follow(swaps, tried -> contest.worseThanEmpty(head, tried));
    }

    /** Everything that stands in the slots. */
    List<Integer> heads() {
        return heads;
    }

    private Function<Swaps, Verdict> found(int head) {
        return verdicts.computeIfAbsent(head, this::verdict);
    }

    /** Finds out about all parts what is so whatever stands around. */
    void settle() {
        heads.forEach(this::found);
    }

    /** Tries once more what was left undecided. */
    void settleAgain() {
        heads.stream().filter(head -> settled(head).filter(Verdict.Open.class::isInstance).isPresent()).forEach(head -> verdicts.put(head, verdict(head)));
    }

    /** The verdict on a part, where it is the same in all of the slots. */
    Optional<Verdict> settled(int head) {
        return found(head) instanceof Settled<Verdict> settled ? Optional.of(settled.result()) : Optional.empty();
    }

    /** Whether a part is seen to be worse than nothing, where that is the same in all of the slots. */
    Optional<Boolean> settledWorseThanEmpty(int head) {
        return worseThanEmpty.computeIfAbsent(head, this::emptiness) instanceof Settled<Boolean> settled ? Optional.of(settled.result()) : Optional.empty();
    }

    /** The verdict on a part in one of the slots. */
    Verdict in(int head, Swaps swaps) {
        return found(head).apply(swaps);
    }

    /** Whether a part is seen to be worse than nothing in one of the slots. */
    boolean worseThanEmpty(int head, Swaps swaps) {
        return worseThanEmpty.computeIfAbsent(head, this::emptiness).apply(swaps);
    }
}
