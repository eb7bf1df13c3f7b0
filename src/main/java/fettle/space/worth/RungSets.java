package fettle.space.worth;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Tells for many sets of roles at once that a part is a rung for one of them, or for which of them it is none, from what comes to most by a few rates.
 *
 * <p>What comes to most by a rate lies on the hull. Between two rates at which a part falls short it does so by each rate by which the best of the one, or the best of the
 * other, comes to more than what the part's own best at both make up: as the rate turns, the most that a part comes to is convex.
 */
final class RungSets {

    private static final int MOST_RATES = 12;

    private final Place place;
    private final List<Place> all;
    private final Contenders contenders;
    private final Function<Rate, BestAtRate> atRate;
    private final RoleList sets;
    private final BitSet open = new BitSet();
    /** From benefit alone to cost alone. */
    private final List<Sample> samples = new ArrayList<>();
    private final boolean rung;
    /** The first between the extremes. */
    private Sample middle;

    /**
     * What comes to most by a rate, by the places of the sets.
     *
     * @param own among the part's assemblies
     * @param best among some that come to more
     */
    private record Sample(Rate rate, BestAtRate.Best own, BestAtRate.Best best) {

        /** Whether the part's best falls short. Where one figure alone counts, the corner of the hull is the best by the other. */
        boolean behind(int at) {
            return best.weighed(at) > own.weighed(at)
                    || rate.extreme() && best.weighed(at) == own.weighed(at) && best.besides(at) != own.besides(at);
        }

        /** By how much. */
        long shortfall(int at) {
            return Math.subtractExact(best.weighed(at), own.weighed(at));
        }

        /** How much more the best here comes to by another rate than the part's best there. */
        long beyond(Sample other, int at) {
            return Math.subtractExact(other.rate.weighed(cost(at), benefit(at)), other.own.weighed(at));
        }

        /** What the best costs. */
        long cost(int at) {
            return rate.cost(best.weighed(at), best.besides(at));
        }

        /** What the best brings. */
        long benefit(int at) {
            return rate.benefit(best.weighed(at), best.besides(at));
        }
    }

    /**
     * For a part in a place.
     *
     * @param all whatever stands there
     * @param atRate the best by a rate
     * @throws ArithmeticException where figures are too long
     */
    RungSets(Place place, List<Place> all, Contenders contenders, Function<Rate, BestAtRate> atRate) {
        this.place = place;
        this.all = all;
        this.contenders = contenders;
        this.atRate = atRate;
        this.sets = new RoleList(0, place.contested().stream().mapToLong(Long::longValue).toArray());
        this.rung = sought();
    }

    /** Whether the part is a rung for one of the sets. */
    boolean rung() {
        return rung;
    }

    /** The sets for which it may still be one. */
    List<Long> open() {
        return open.stream().mapToObj(sets::set).toList();
    }

    /** All sets, those first for which the part falls the least short of what was looked at by a rate between the two extremes. */
    List<Long> nearestFirst() {
        Sample between = middle == null ? samples.get(0) : middle;
        return IntStream.range(0, sets.size()).filter(at -> !between.own.none(at)).boxed().sorted(Comparator.<Integer>comparingLong(between::shortfall).thenComparing(Comparator.naturalOrder())).map(sets::set).toList();
    }

    private boolean sought() {
        boolean found = touches(Rate.BENEFIT) || touches(Rate.COST);
        BitSet left = (BitSet) open.clone();
        while (!found && !left.isEmpty()) {
            int at = left.nextSetBit(0);
            int from = uncertain(at);
            if (from == samples.size() - 1) {
                open.clear(at);
                left.clear(at);
                continue;
            }
            Optional<Rate> next = between(samples.get(from), samples.get(from + 1), at);
            if (next.isPresent() && samples.size() < MOST_RATES) {
                found = touches(next.get());
            } else {
                left.clear(at);
            }
        }
        return found;
    }

    /** Looks by one more rate; whether the part's best for a set that is open lies on the hull. */
    private boolean touches(Rate rate) {
        BestAtRate bests = atRate.apply(rate);
        BestAtRate.Best own = new BestAtRate.Best(sets.size());
        bests.add(contenders.of(place), sets, own);
        Sample sample = new Sample(rate, own, own.copy());
        if (samples.isEmpty()) {
            IntStream.range(0, sets.size()).filter(at -> !sample.own.none(at)).forEach(open::set);
        }
        if (Place.orNothing(place.contents()) && sets.place(0) >= 0) {
            sample.best.put(sets.place(0), 0, 0);
        }
        for (Place rival : all) {
            if (rival.head() != place.head() && !open.stream().allMatch(sample::behind)) {
                bests.add(contenders.of(rival), sets, sample.best);
            }
        }
        if (middle == null && !rate.extreme()) {
            middle = sample;
        }
        int at = 0;
        while (at < samples.size() && samples.get(at).rate.compareTo(rate) < 0) {
            at++;
        }
        samples.add(at, sample);
        return !open.stream().allMatch(sample::behind);
    }

    /** The first of two neighbours between which it isn't certain that the part falls short; the last of all where there is none. */
    private int uncertain(int at) {
        int i = 0;
        while (i + 1 < samples.size() && shortBetween(samples.get(i), samples.get(i + 1), at)) {
            i++;
        }
        return i;
    }

    private static boolean shortBetween(Sample one, Sample other, int at) {
        long atOne = one.shortfall(at);
        long atOther = other.shortfall(at);
        long beyondOther = one.beyond(other, at);
        long beyondOne = other.beyond(one, at);
        return beyondOther > 0 || beyondOther == 0 && atOne > 0 || beyondOne > 0 || beyondOne == 0 && atOther > 0
                || Math.multiplyExact(atOne, atOther) > Math.multiplyExact(beyondOne, beyondOther);
    }

    /** The rate by which the best of two neighbours come to the same, where it is the least certain; none where that was tried. */
    private Optional<Rate> between(Sample one, Sample other, int at) {
        long rise = one.benefit(at) - other.benefit(at);
        long run = one.cost(at) - other.cost(at);
        return rise <= 0 || run <= 0 ? Optional.empty()
                : Optional.of(Rate.of(rise, run)).filter(rate -> samples.stream().noneMatch(sample -> sample.rate.compareTo(rate) == 0));
    }
}
