package fettle.space.best;

import fettle.space.BuildResult;
import fettle.space.Fraction;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Seeks the swaps to make one after the other, each of which gains something, is sound and keeps to the budget. Taking what gains most each time can spend on one swap what two
 * others would have made more of; so all beginnings are followed where there are few or there is time for all, which proves the outcome, and else those that gain most and
 * those that gain most for their price.
 */
final class Upgrading {

    /** How many beginnings are followed at most, however short the time. */
    private static final int FEW = 16;

    /** How many are before the last swap where no time is set, since only the best end counts: seconds' work. */
    private static final int MANY = 250;

    private static final Comparator<Begun> MOST_GAINED = Comparator.comparing(Begun::gain).reversed().thenComparing(Begun::price);

    private final BuildResult before;
    private final Source source;

    /** Finds single swaps. */
    interface Source {

        /**
         * The single swaps of a build.
         *
         * @param least what they are to gain, where others may be left out
         */
        Swaps.Found of(BuildResult build, Optional<BigDecimal> least);
    }

    /**
     * For a build.
     *
     * @param source finds the swaps of what it becomes
     */
    Upgrading(BuildResult before, Source source) {
        this.before = before;
        this.source = source;
    }

    /** Swaps made so far, what they gain and what is to be paid for them in all. */
    private record Begun(List<Swap> swaps, BigDecimal gain, BigDecimal price) {

        Begun and(Swap next) {
            List<Swap> all = new ArrayList<>(swaps);
            all.add(next);
            return new Begun(all, gain.add(next.gain()), price.add(next.price()));
        }

        /** What is free gains most for its price. */
        Fraction returns() {
            return Fraction.of(gain).over(Fraction.of(price.max(BigDecimal.valueOf(1, 2))));
        }

        /** The build that it comes to. */
        BuildResult becomes() {
            return swaps.get(swaps.size() - 1).after();
        }

        /** The parts of the build that it comes to, by path. */
        Map<String, String> parts() {
            return becomes().placement().orElseThrow().partsByPath();
        }
    }

    /** Beginnings to follow, the first of them in any case. */
    private record Open(List<Begun> begun, int inAnyCase) {

        /** All there are where they are few or time for them is granted; else some. */
        static Open of(List<Begun> different, boolean beforeLast, Effort effort) {
            List<Begun> inAnyCase = followed(different, FEW);
            return new Open(joined(inAnyCase, effort.bounded() ? different : followed(different, beforeLast ? MANY : FEW)), inAnyCase.size());
        }
    }

    /**
     * At most so many swaps; fewer where nothing more is gained.
     *
     * @param effort where it has an end, beginnings are followed until then, however many there are; else many of them before the last swap, and
     * few before that
     */
    Steps steps(Swaps.Found first, int most, Effort effort) {
        boolean all = true;
        Begun best = new Begun(List.of(), BigDecimal.ZERO, BigDecimal.ZERO);
        Open open = new Open(List.of(best), 1);
        for (int i = 0; i < most && !open.begun.isEmpty(); i++) {
            List<Begun> further = new ArrayList<>();
            for (int j = 0; j < open.begun.size(); j++) {
                effort.lookNext();
                if (j >= open.inAnyCase && effort.spent()) {
                    all = false;
                    break;
                }
                Begun begun = open.begun.get(j);
                // After the last swap only the most counts.
                Optional<BigDecimal> least = i + 1 < most ? Optional.empty() : Optional.of(best.gain().subtract(begun.gain()));
                Swaps.Found found = begun.swaps().isEmpty() ? first : source.of(begun.becomes(), least);
                all &= found.bounded().isEmpty();
                for (Swap swap : found.swaps()) {
                    if (swap.gain().signum() > 0 && swap.sound() && Improvement.affordable(before, swap.after())) {
                        Begun more = begun.and(swap);
                        further.add(more);
                        best = MOST_GAINED.compare(best, more) <= 0 ? best : more;
                    }
                }
            }
            further.sort(MOST_GAINED);
            if (i + 1 < most) {
                List<Begun> different = different(further);
                open = Open.of(different, i + 2 == most, effort);
                all &= open.begun.size() == different.size();
            }
        }
        return new Steps(best.swaps(), all);
    }

    /** Of several that come to the same build the cheapest; those that gain most come first, as they did. */
    private static List<Begun> different(List<Begun> begun) {
        Map<Map<String, String>, Begun> different = new LinkedHashMap<>();
        begun.forEach(each -> different.putIfAbsent(each.parts(), each));
        return List.copyOf(different.values());
    }

    /** So many at most: one half those that gain most, the other those that gain most for their price. */
    private static List<Begun> followed(List<Begun> begun, int most) {
        if (begun.size() <= most) {
            return begun;
        }
        List<Begun> byReturns = begun.stream().sorted(Comparator.comparing(Begun::returns).reversed().thenComparing(MOST_GAINED)).toList();
        return joined(begun.subList(0, most / 2), byReturns).subList(0, most);
    }

    /** These and those of others that are not among them; the very same, since telling whether builds are equal takes long. */
    private static List<Begun> joined(List<Begun> these, List<Begun> others) {
        Set<Begun> known = Collections.newSetFromMap(new IdentityHashMap<>());
        return Stream.concat(these.stream(), others.stream()).filter(known::add).toList();
    }
}
