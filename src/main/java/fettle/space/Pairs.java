package fettle.space;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What sets of assemblies can bring to two attributes at once; of two choices of which one is no worse in what is wanted, that one is kept. */
final class Pairs implements Algebra<List<Pairs.Pair>> {

    /** What an assembly brings to both; {@code null} where it brings nothing to an extreme. */
    record Pair(BigDecimal one, BigDecimal other) {}

    private final Strand one;
    private final Strand other;
    private final Strand.Wanted wantedOne;
    private final Strand.Wanted wantedOther;
    private final int most;
    private final List<Pair> nothing;
    private final long mostWork;
    private long work;

    /**
     * Pairs of what is brought to two attributes.
     *
     * @param wantedOne of the parts' own sum, product or extreme
     * @param most how many pairs may be kept for one set
     * @param mostWork how many pairs may be formed in all
     */
    Pairs(Strand one, Strand.Wanted wantedOne, Strand other, Strand.Wanted wantedOther, int most, long mostWork) {
        this.one = one;
        this.other = other;
        this.wantedOne = wantedOne;
        this.wantedOther = wantedOther;
        this.most = most;
        this.nothing = List.of(new Pair(one.nothing(), other.nothing()));
        this.mostWork = mostWork;
    }

    @Override
    public List<Pair> one() {
        return nothing;
    }

    @Override
    public List<Pair> part(int part) {
        Pair brought = new Pair(one.figures()[part], other.figures()[part]);
        return brought.equals(nothing.get(0)) ? nothing : List.of(brought);
    }

    @Override
    public List<Pair> both(List<Pair> left, List<Pair> right) {
        if (left == nothing || right == nothing) {
            return left == nothing ? right : left;
        }
        spend((long) left.size() * right.size());
        List<Pair> all = new ArrayList<>();
        for (Pair a : left) {
            for (Pair b : right) {
                all.add(new Pair(one.both(a.one, b.one), other.both(a.other, b.other)));
            }
        }
        return best(all);
    }

    @Override
    public List<Pair> either(List<Pair> left, List<Pair> right) {
        if (left == right) {
            return left;
        }
        spend(left.size() + right.size());
        List<Pair> all = new ArrayList<>(left);
        all.addAll(right);
        return best(all);
    }

    private void spend(long amount) {
        work += amount;
        if (work > mostWork) {
            throw new TooLarge(TooLarge.What.WORK, mostWork);
        }
    }

    /** Drops what another does at least as well; where a value is missing, only its like is compared. */
    private List<Pair> best(List<Pair> pairs) {
        Set<Pair> distinct = new LinkedHashSet<>();
        pairs.forEach(pair -> distinct.add(new Pair(plain(pair.one), plain(pair.other))));
        List<Pair> sorted = new ArrayList<>(distinct);
        sorted.sort((a, b) -> {
            int byOne = compare(a.one, b.one, wantedOne);
            return byOne != 0 ? byOne : compare(a.other, b.other, wantedOther);
        });
        // Of those that can be compared, what comes earlier is no worse in the first value.
        Map<List<Object>, BigDecimal> bestOther = new HashMap<>();
        List<Pair> kept = new ArrayList<>();
        for (Pair pair : sorted) {
            List<Object> alike = Arrays.asList(
                    wantedOne == Strand.Wanted.EACH ? pair.one : (Object) (pair.one == null), wantedOther == Strand.Wanted.EACH ? pair.other : (Object) (pair.other == null));
            boolean first = !bestOther.containsKey(alike);
            if (first || compare(pair.other, bestOther.get(alike), wantedOther) < 0) {
                bestOther.put(alike, pair.other);
                kept.add(pair);
            }
        }
        if (kept.size() > most) {
            throw new TooLarge(TooLarge.What.STATES, most);
        }
        return kept;
    }

    private static BigDecimal plain(BigDecimal value) {
        return value == null ? null : value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
    }

    /** The better first, nothing before all else. */
    private static int compare(BigDecimal a, BigDecimal b, Strand.Wanted wanted) {
        if (a == null || b == null) {
            return a == b ? 0 : a == null ? -1 : 1;
        }
        return wanted == Strand.Wanted.MORE ? b.compareTo(a) : a.compareTo(b);
    }
}
